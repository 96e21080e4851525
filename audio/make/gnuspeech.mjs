/** Renders with GnuSpeech: `node audio/make/gnuspeech.mjs JOBS.json`, jobs {path, text, voice, tempo}. GNUSPEECH names the unpacked npm package. */
import { readFileSync, writeFileSync } from "node:fs";

const folder = process.env.GNUSPEECH ?? "out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm";
const { synthesize } = await import(`file://${folder}/dist/exports/GnuSpeech.js`);
/** Its pitch drifts by chance: with the same numbers for every text, a text sounds alike whenever and wherever it is rendered. */
let state = 1;
globalThis.crypto.getRandomValues = (into) => {
  for (let n = 0; n < into.length; n++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    into[n] = state >>> 16;
  }
  return into;
};
for (const { path, text, voice, tempo } of JSON.parse(readFileSync(process.argv[2], "utf8"))) {
  state = 1;
  const { audioData } = await synthesize(text, { voice, tempo, controlRate: 200, debug: false });
  writeFileSync(path, audioData);
}
