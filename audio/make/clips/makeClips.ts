/**
 * Renders every text that the companion can say into sprite files under public/clips, with the manifest that says
 * where each lies. `npm run clips`, or `npm run clips -- es` for one language; needs Debian's festival with
 * festvox-us-slt-hts for English, espeak-ng for Spanish, and ffmpeg. Same texts, same bytes.
 */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Clip, type ClipManifest, clipKey } from "../../../src/announcements/clips";
import { phrasebookTexts, protocolTexts, singleWords } from "../../../src/announcements/everyText";
import { bookFor, type SpokenLanguage, spokenLanguages } from "../../../src/announcements/phrasebooks";
import { bundledProtocols } from "../../../src/session/protocols";
import { evened } from "./evened";
import { levelled, trimmed } from "./loudness";
import { pack } from "./pack";
import { pronounced } from "./pronounced";
import { synthesise, type Voice } from "./voices";
import { readWav } from "./wav";

/**
 * English: the best understood of those that compareVoices.ts ranks; the recorded artist is to be another speaker.
 * Spanish: the only free Spanish synthesiser in Debian 12; the Latin American accent, since most speakers have it.
 */
const voices: Readonly<Record<SpokenLanguage, Voice>> = { en: "festival-slt", es: "espeak-es-f2" };
const rateHz = 16_000;
const folder = "public/clips";

interface Sprite {
  readonly name: string;
  readonly texts: readonly string[];
}

/** A text goes into one file: the phrasebook's, its protocol's, or the one that several protocols share. */
function spritesFor(language: SpokenLanguage): readonly Sprite[] {
  const book = bookFor(language);
  const said = phrasebookTexts(book);
  const each = bundledProtocols.map((protocol) => ({ name: protocol.id, texts: protocolTexts(protocol, book) }));
  const holders = (text: string): number =>
    each.filter(({ texts }) => texts.some((other) => clipKey(other) === clipKey(text))).length;
  const sprites: Sprite[] = [
    { name: "phrasebook", texts: said },
    { name: "shared", texts: each.flatMap(({ texts }) => texts.filter((text) => holders(text) > 1)) },
    ...each,
  ];
  return [...sprites, { name: "words", texts: singleWords(sprites.flatMap(({ texts }) => texts)) }];
}

const asked = process.argv.slice(2);
for (const language of spokenLanguages.filter((each) => asked.length === 0 || asked.includes(each))) {
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder)) if (old.startsWith(`${language}.`)) rmSync(join(folder, old));
  const clips: Record<string, Clip> = {};
  for (const { name, texts } of spritesFor(language)) {
    const fresh = new Map(
      texts.map((text) => [clipKey(text), text]).filter(([key]) => !Object.hasOwn(clips, key ?? "")) as [
        string,
        string,
      ][],
    );
    const path = join(folder, `${language}.${name}.mp3`);
    Object.assign(clips, render(language, fresh, path));
    console.log(`${path}: ${fresh.size} clips, ${statSync(path).size} bytes`);
  }
  const manifest: ClipManifest = { format: "gloveside-clips", formatVersion: 1, language, clips };
  writeFileSync(join(folder, `${language}.json`), `${JSON.stringify(manifest, null, 1)}\n`);
}

function render(
  language: SpokenLanguage,
  texts: ReadonlyMap<string, string>,
  path: string,
): Readonly<Record<string, Clip>> {
  const work = mkdtempSync(join(tmpdir(), "clips-"));
  const wavs = evened(synthesise(voices[language], [...texts.values()].map(pronounced[language]), work), rateHz);
  const takes = [...texts.keys()].map((key, place) => ({
    key,
    sound: levelled(trimmed(readWav(wavs[place] ?? ""))),
  }));
  const clips = pack(takes, path, rateHz);
  rmSync(work, { recursive: true });
  return clips;
}
