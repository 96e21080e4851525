/**
 * Builds the page that carries a record: program and style in one file, allowed by their hashes and by nothing else. It
 * may ask nobody for anything, so it works offline, from a disk, for as long as there are browsers.
 */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { build, type Plugin, type Rollup } from "vite";
import { marker } from "../container";
import { fileName } from "../fileName";

const root = fileURLToPath(new URL("../../..", import.meta.url));

const hash = (text: string) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

/** Ends no script element early (HTML, section 4.12.1.3). */
const withinScript = (code: string) => code.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");

/** The page for good, whatever else is being built or tested around it. */
async function forProduction<T>(make: () => Promise<T>): Promise<T> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = "production";
  try {
    return await make();
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}

export const recordPage = (appVersion: string): Promise<string> => forProduction(() => made(appVersion));

async function made(appVersion: string): Promise<string> {
  const built = await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    define: { "import.meta.env.APP_VERSION": JSON.stringify(appVersion), "process.env.NODE_ENV": '"production"' },
    plugins: [react()],
    css: { modules: { localsConvention: "camelCaseOnly" } },
    build: {
      write: false,
      target: "es2022",
      cssCodeSplit: false,
      modulePreload: { polyfill: false },
      rollupOptions: { input: `${root}src/bundle/page.tsx`, output: { format: "es", codeSplitting: false } },
    },
  });
  const { output } = (Array.isArray(built) ? built[0] : built) as Rollup.RollupOutput;
  const chunks = output.filter((part) => part.type === "chunk");
  const styles = output.filter((part) => part.type === "asset" && part.fileName.endsWith(".css"));
  if (chunks.length !== 1) throw new Error(`The record's page must be one program; it is ${chunks.length}.`);
  const code = withinScript(chunks[0]?.code.trim() ?? "");
  // The order of the layers comes first, whatever order the parts were put together in.
  const rules = styles.map((part) => (part.type === "asset" ? String(part.source) : "")).join("");
  const style = `@layer tokens, base, parts;${rules.trim()}`;
  const policy = [
    "default-src 'none'",
    `script-src ${hash(code)}`,
    `style-src ${hash(style)}`,
    "media-src blob: data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Gloveside record</title>
<style>${style}</style>
</head>
<body>
<div id="app"><main><h1>Not checked</h1><p>This page checks the record that it carries by a program of its own, and the program has not run. Open the page in a current browser with scripts allowed. If it says this still, the page was altered.</p></main></div>
${marker}
<script type="module">${code}</script>
</body>
</html>
`;
}

/** Puts the page beside the app, where it is kept for working offline like everything else. */
export const recordPagePlugin = (appVersion: string): Plugin => ({
  name: "record-page",
  async configureServer(server) {
    let made: Promise<string> | null = null;
    server.middlewares.use(`/${fileName}`, async (_request, response) => {
      made ??= recordPage(appVersion);
      response.setHeader("Content-Type", "text/html; charset=utf-8");
      response.end(await made);
    });
  },
  async generateBundle() {
    this.emitFile({ type: "asset", fileName, source: await recordPage(appVersion) });
  },
});
