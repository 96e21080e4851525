/** The build: one page, everything from our own origin, and a service worker that keeps it all for working offline. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { contentSecurityPolicy } from "./bin/headers.mjs";
import packageJson from "./package.json" with { type: "json" };
import { manifestFor, otherManifests } from "./src/app/manifest";
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

/** Of all that judges a protocol: rules, chart, station. Another digest, and every proof is made again. */
function checkerDigest(): string {
  const sum = createHash("sha256");
  for (const folder of ["machines", "src/check", "src/session", "src/turnaround/breakdown"]) {
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter(
      (name) => name.endsWith(".ts") && !name.endsWith(".test.ts") && !name.startsWith("protocols"),
    );
    for (const name of files.sort()) sum.update(`${folder}/${name}\0`).update(readFileSync(`${folder}/${name}`));
  }
  return sum.digest("hex");
}

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

const sha256 = (content: string | Uint8Array) => createHash("sha256").update(content).digest("hex");

/** The list of what "Prepare this device" fetches, with the hash of each file. */
const devicePack: Plugin = {
  name: "device-pack",
  apply: "build",
  generateBundle(_, bundle) {
    const inPublic = ["voice", "own-voice", "clips", "practice"].flatMap((folder) =>
      existsSync(`public/${folder}`)
        ? readdirSync(`public/${folder}`, { recursive: true, encoding: "utf8" }).map((name) => `${folder}/${name}`)
        : [],
    );
    const kept = inPublic
      .filter((path) => statSync(`public/${path}`).isFile() && path !== "practice/timeline.json")
      .map((path) => ({ path, content: readFileSync(`public/${path}`) as Uint8Array }));
    const modules = Object.values(bundle).flatMap((file) =>
      file.type === "asset" && file.fileName.endsWith(".wasm")
        ? [{ path: file.fileName, content: Buffer.from(file.source) as Uint8Array }]
        : [],
    );
    const files = [...kept, ...modules].map(({ path, content }) => ({
      path,
      bytes: content.length,
      sha256: sha256(content),
    }));
    const pack = { format: "gloveside-device-pack", files };
    this.emitFile({ type: "asset", fileName: "device-pack.json", source: JSON.stringify(pack) });
  },
};

/** Programs of the prepare screen. Filled once all are known, before they are put together. */
const firstLoad = new Set<string>();

/** They come in one file: forty, each asked for alone, cost a slow network and a slow phone dearly. */
const firstLoadTogether: Plugin = {
  name: "first-load-together",
  apply: "build",
  buildEnd() {
    const reach = (id: string): void => {
      for (const next of this.getModuleInfo(id)?.importedIds ?? []) {
        if (firstLoad.has(next)) continue;
        firstLoad.add(next);
        reach(next);
      }
    };
    for (const id of this.getModuleIds()) if (id.endsWith("/src/app/main.tsx")) reach(id);
  },
};

/** In the languages that the page does not begin with; the page names the one of its settings (src/app/wireLook.ts). */
const manifests: Plugin = {
  name: "manifests",
  apply: "build",
  generateBundle() {
    for (const file of otherManifests()) this.emitFile({ type: "asset", ...file });
  },
};

export default defineConfig({
  base: "./",
  define: {
    "import.meta.env.APP_VERSION": JSON.stringify(packageJson.version),
    "import.meta.env.CHECKER_DIGEST": JSON.stringify(checkerDigest()),
    // Rendered by the rehearsal; without it the page does not ask for a file that is not there.
    "import.meta.env.HAS_PRACTICE": JSON.stringify(existsSync("public/practice/practice.json")),
  },
  build: {
    target: "es2022",
    // The policy allows no data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Which source came into which file, for those who measure.
    manifest: true,
    rolldownOptions: {
      output: {
        // The schema library comes with its setting for pages that forbid evaluation, before any schema is made.
        codeSplitting: {
          groups: [
            { name: "schemas", test: /node_modules\/zod\/|src\/app\/jitless/, priority: 2 },
            { name: "first", test: (id) => firstLoad.has(id), priority: 1 },
          ],
        },
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
    firstLoadTogether,
    devicePack,
    manifests,
    VitePWA({
      // A new version waits until it is asked for: nothing reloads in the middle of a session.
      registerType: "prompt",
      injectRegister: false,
      manifest: manifestFor("en"),
      workbox: {
        // The shell alone, so that the first visit is short. The ear and the voice come with "Prepare this device".
        globPatterns: ["**/*.{html,js,css,svg,png,woff2,wav}", "device-pack.json"],
        globIgnores: ["pictures/**"],
        // A page of the shell is small; anything larger is a mistake and fails the build.
        maximumFileSizeToCacheInBytes: 2 * 1024 * 1024,
        runtimeCaching: [
          {
            // From the device where it is prepared, checked by its hash before it was kept (src/app/devicePack.ts).
            urlPattern: ({ url, request, sameOrigin }) =>
              sameOrigin &&
              !request.headers.has("x-gloveside-sha256") &&
              (/\/(clips|voice|own-voice|practice)\//.test(url.pathname) || url.pathname.endsWith(".wasm")),
            handler: "CacheFirst",
            options: { cacheName: "gloveside-pack", plugins: [{ cacheWillUpdate: async () => null }] },
          },
        ],
        cleanupOutdatedCaches: true,
        navigateFallback: "index.html",
        sourcemap: false,
      },
    }),
  ],
});
