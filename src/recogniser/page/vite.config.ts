/** The ear's own page, with the phrase model from the repository's public folder. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

export default defineConfig({
  root: fileURLToPath(new URL(".", import.meta.url)),
  base: "./",
  publicDir: fileURLToPath(new URL("../../../public", import.meta.url)),
  worker: { format: "es" },
  build: { assetsInlineLimit: 0, modulePreload: { polyfill: false }, copyPublicDir: false },
});
