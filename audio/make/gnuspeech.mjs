/** Renders with GnuSpeech: `node audio/make/gnuspeech.mjs JOBS.json`, jobs {path, text, voice, tempo}. GNUSPEECH names the unpacked npm package. */
import { readFileSync, writeFileSync } from "node:fs";

const folder = process.env.GNUSPEECH ?? "out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm";
const { synthesize } = await import(`file://${folder}/dist/exports/GnuSpeech.js`);
for (const { path, text, voice, tempo } of JSON.parse(readFileSync(process.argv[2], "utf8"))) {
  const { audioData } = await synthesize(text, { voice, tempo, controlRate: 200, debug: false });
  writeFileSync(path, audioData);
}
