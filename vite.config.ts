/** The build: one page, everything from our own origin, and a service worker that keeps it all for working offline. */
import { existsSync } from "node:fs";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { contentSecurityPolicy } from "./bin/headers.mjs";
import packageJson from "./package.json" with { type: "json" };
import { recordPagePlugin } from "./src/bundle/build/recordPage";

/** In the built page only: the development server needs inline scripts. */
const strictPolicy: Plugin = {
  name: "strict-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: contentSecurityPolicy },
      injectTo: "head-prepend",
    },
  ],
};

/** Pages are fetched one by one, so any style sheet may come first: each states the order of the layers itself. */
const layerOrder: Plugin = {
  name: "layer-order",
  apply: "build",
  generateBundle(_, bundle) {
    for (const file of Object.values(bundle))
      if (file.type === "asset" && file.fileName.endsWith(".css"))
        file.source = `@layer tokens, base, parts;\n${file.source}`;
  },
};

export default defineConfig({
  base: "./",
  define: {
    "import.meta.env.APP_VERSION": JSON.stringify(packageJson.version),
    // Rendered by the rehearsal; without it the page does not ask for a file that is not there.
    "import.meta.env.HAS_PRACTICE": JSON.stringify(existsSync("public/practice/practice.json")),
  },
  build: {
    target: "es2022",
    // The policy allows no data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        // The schema library comes with its setting for pages that forbid evaluation, before any schema is made.
        codeSplitting: { groups: [{ name: "schemas", test: /node_modules\/zod\/|src\/app\/jitless/ }] },
      },
    },
  },
  worker: { format: "es" },
  css: { modules: { localsConvention: "camelCaseOnly" } },
  plugins: [
    react(),
    recordPagePlugin(packageJson.version),
    strictPolicy,
    layerOrder,
    VitePWA({
      // A new version waits until it is asked for: nothing reloads in the middle of a session.
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        id: "/",
        name: "Gloveside",
        short_name: "Gloveside",
        description: "A voice-driven, hands-free step companion for a tattoo station.",
        lang: "en",
        start_url: "./",
        scope: "./",
        display: "standalone",
        orientation: "any",
        background_color: "#17112b",
        theme_color: "#17112b",
        icons: [
          { src: "icons/mark.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
          { src: "icons/mark-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
          { src: "icons/mark-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
          { src: "icons/mark-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
        ],
      },
      workbox: {
        // All that a session needs without a network: the shell, the voice's clips, the cues, the phrase model.
        globPatterns: ["**/*.{html,js,css,svg,png,woff2,json,bin,mp3,m4a,ogg,webm,wav}"],
        // The README's pictures and what only tools read.
        globIgnores: ["pictures/**", "practice/timeline.json", "*.schema.json"],
        // The phrase model is 2.5 MB and a sprite of clips a few; anything larger is a mistake and fails the build.
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
        // The reader of codes is fetched when a camera is first opened, and kept from then on.
        runtimeCaching: [
          { urlPattern: /\/assets\/[^/]+\.wasm$/, handler: "CacheFirst", options: { cacheName: "gloveside-reader" } },
        ],
        cleanupOutdatedCaches: true,
        navigateFallback: "index.html",
        sourcemap: false,
      },
    }),
  ],
});
