/** What the app weighs, beside the same app as one program that is not split. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "vite";
import { builtFiles } from "../../support/builtFiles";
import { kb, print } from "./table";

/** The whole page as one program: what every first visit would fetch. */
async function unsplit(): Promise<{ bytes: number; gzipBytes: number }> {
  const outDir = mkdtempSync(join(tmpdir(), "gloveside-unsplit-"));
  try {
    await build({
      logLevel: "silent",
      build: { outDir, emptyOutDir: true, rolldownOptions: { output: { codeSplitting: false } } },
    });
    const isPage = (file: string) => /^index-.*\.js$/.test(file);
    const pages = readdirSync(join(outDir, "assets")).filter(isPage);
    const contents = pages.map((file) => readFileSync(join(outDir, "assets", file)));
    return {
      bytes: contents.reduce((sum, content) => sum + content.length, 0),
      gzipBytes: contents.reduce((sum, content) => sum + gzipSync(content).length, 0),
    };
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}

export async function measureSizes(): Promise<void> {
  const built = builtFiles("dist/");
  const row = (what: string, files: readonly string[]) => ({
    what,
    figures: [String(files.length), kb(built.bytes(files)), kb(built.gzipBytes(files))],
  });
  const whole = await unsplit();
  const isWorker = /(\.worker|\.worklet)-/;
  const ofPage = built.all.filter((file) => !isWorker.test(file));
  print(
    "sizes",
    ["files", "as they are", "gzip"],
    [
      row("program of a first visit, English  (bar 200 KB)", built.firstLoad("en")),
      row("program of a first visit, Spanish  (bar 200 KB)", built.firstLoad("es")),
      row("program before a session, Spanish", built.beforeSession("es")),
      row("program of every page", ofPage),
      { what: "  the same, not split: every first visit", figures: ["1", kb(whole.bytes), kb(whole.gzipBytes)] },
      row(
        "programs of workers and worklets",
        built.all.filter((file) => isWorker.test(file)),
      ),
      ...assets.map(([what, pattern]) => row(what, built.matching(pattern))),
    ],
  );
}

const assets: readonly (readonly [string, RegExp])[] = [
  ["styles", /\.css$/],
  ["letters", /\.woff2$/],
  ["phrase models", /^voice\/.*\.(bin|json)$/],
  ["clips, English", /^clips\/en\./],
  ["clips, Spanish", /^clips\/es\./],
  ["earcons", /^cues\//],
  ["recorded artist", /^practice\//],
  ["reader of codes", /\.wasm$/],
  ["the page that carries a record", /^record-page\.html$/],
];
