import { existsSync, readFileSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { commandIds } from "../intent/phrases";
import { DeviationCode, DiscrepancyReason, Phase, RefusalReason } from "../session/fact";
import { eventIds, everyStep } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { ClipManifest, clipKey, clipsOf, durationMs, filesOf, uncovered } from "./clips";
import { phrasebookTexts, protocolTexts } from "./everyText";
import { bookFor, spokenLanguages } from "./phrasebooks";
import { sayClock, sayHowLong, sayWipedEarly } from "./sayClock";
import {
  sayBegun,
  sayCaution,
  sayClosed,
  sayDeviation,
  sayEarBack,
  sayEarTrouble,
  sayEvent,
  sayExposure,
  sayItemNoted,
  sayKept,
  sayMayNotTouch,
  sayMayTouch,
  sayNote,
  sayNotKept,
  sayRefused,
  sayReopened,
  saySoundCheck,
  sayVolume,
} from "./sayNotice";
import {
  askClose,
  askDiscrepancy,
  askExposureChoice,
  askExposureEnd,
  askItem,
  askPhrase,
  askRecount,
  askSharps,
  askSkipReason,
  askUndo,
  sayFirstAid,
} from "./sayQuestion";
import { sayPhase, sayStep, sayWhatLeft, sayWhatNow } from "./sayStep";
import { clockMoments, textOf, type Utterance } from "./utterance";

const manifestOf = (language: string): ClipManifest =>
  ClipManifest.parse(JSON.parse(readFileSync(`public/clips/${language}.json`, "utf8")));

const keys = <K extends string>(of: Readonly<Record<K, unknown>>): readonly K[] => Object.keys(of) as K[];
const upTo = (most: number): readonly number[] => Array.from({ length: most + 1 }, (_, n) => n);

/** All that can be said in a language, with every item and every step of the bundled protocols. */
function everything(language: string): readonly Utterance[] {
  const book = bookFor(language);
  const items = bundledProtocols.flatMap((protocol) => protocol.items);
  const steps = bundledProtocols.flatMap((protocol) => everyStep(protocol).map(({ step }) => step));
  const first = items[0] ?? null;
  return [
    ...RefusalReason.options.flatMap((reason) => [sayRefused(book, reason, null), sayRefused(book, reason, first)]),
    ...DeviationCode.options.flatMap((code) => [sayDeviation(book, code, null), sayDeviation(book, code, first)]),
    ...Phase.options.map((phase) => sayPhase(book, phase)),
    ...clockMoments.flatMap((moment) => [sayClock(book, moment, items.slice(0, 3)), sayClock(book, moment, items)]),
    ...upTo(3_601).map((sec) => sayWipedEarly(book, sec * 1_000, sec % 2 ? first : null)),
    ...items.flatMap((item) => [
      askItem(book, item, true),
      askItem(book, item, false),
      sayItemNoted(book, item),
      sayHowLong(book, [
        { item, leftMs: 90_000 },
        { item, leftMs: 0 },
      ]),
    ]),
    sayHowLong(book, []),
    askItem(book, null, true),
    askSkipReason(book),
    ...upTo(60).flatMap((n) => [
      askSharps(book, n, n),
      askSharps(book, n, 2),
      askRecount(book, n),
      askClose(book, { balanced: n % 2 === 0, sharpsOpened: n, deviations: n, stepsLeftOut: n }),
      sayWhatLeft(book, { steps: n, notReady: items.slice(0, n), outOfUse: [], sharpsOut: n }),
    ]),
    ...DiscrepancyReason.options.flatMap((reason) => [
      askDiscrepancy(book, reason, true),
      askDiscrepancy(book, reason, false),
    ]),
    sayFirstAid(book),
    askExposureChoice(book),
    askExposureEnd(book),
    ...keys(book.ask.undo.what).map((what) => askUndo(book, what)),
    ...commandIds.map((command) => askPhrase(book, command)),
    ...steps.map((step) => sayStep(book, [step], "careful")),
    sayStep(book, steps.slice(0, 5), "brisk"),
    sayWhatNow(book, [], "careful"),
    ...eventIds.map((event) => sayEvent(book, event)),
    ...keys(book.kept).map((kept) => sayKept(book, kept)),
    ...keys(book.note).map((moment) => sayNote(book, moment)),
    ...keys(book.notKept).map((reason) => sayNotKept(book, reason)),
    ...keys(book.ear.trouble).map((trouble) => sayEarTrouble(book, trouble)),
    sayEarBack(book),
    ...keys(book.volume).map((change) => sayVolume(book, change)),
    ...keys(book.caution).map((caution) => sayCaution(book, caution)),
    ...keys(book.exposure).map((moment) => sayExposure(book, moment)),
    ...RefusalReason.options.map((reason) => sayMayNotTouch(book, reason, first)),
    ...keys(book.mayTouch.yes).map((because) =>
      sayMayTouch(book, because, first ?? { id: "none", calledAs: { en: "none" } }),
    ),
    sayBegun(book, items.slice(0, 2)),
    sayReopened(book),
    sayClosed(book, true, []),
    sayClosed(book, false, items.slice(0, 3)),
    saySoundCheck(book),
  ];
}

const hasClips = (language: string): boolean => existsSync(`public/clips/${language}.json`);

it("there are clips in every language that is spoken", () => {
  expect(
    spokenLanguages.filter((language) => !hasClips(language)),
    "run `npm run clips` and commit public/clips",
  ).toEqual([]);
});

describe.each(spokenLanguages.filter(hasClips))("clips in %s", (language) => {
  const manifest = manifestOf(language);

  it("speak every announcement of the bundled protocols and the phrasebook, without a voice of the system", () => {
    const missing = everything(language).flatMap((utterance) => uncovered(utterance, manifest));
    expect([...new Set(missing)], "run `npm run clips` and commit public/clips").toEqual([]);
  });

  it("cover every text that is rendered, said today or not", () => {
    const book = bookFor(language);
    const texts = [...phrasebookTexts(book), ...bundledProtocols.flatMap((each) => protocolTexts(each, book))];
    expect(texts.filter((text) => !Object.hasOwn(manifest.clips, clipKey(text)))).toEqual([]);
  });

  it("can spell every letter, digit and code word", () => {
    const book = bookFor(language);
    const spelled = { parts: [{ kind: "free" as const, text: "qz19 w-7" }] };
    expect(clipsOf(spelled, manifest)).toMatchObject([{ say: "text", unspeakable: [] }]);
    expect(Object.values(book.spelling).filter((word) => !Object.hasOwn(manifest.clips, clipKey(word)))).toEqual([]);
  });

  it("lie apart within their files, in the time that each file lasts", () => {
    const every = Object.values(manifest.clips);
    for (const file of new Set(every.map((clip) => clip.file))) {
      const clips = every.filter((clip) => clip.file === file);
      const inOrder = clips.toSorted((a, b) => a.startMs - b.startMs);
      const overlaps = inOrder.filter((clip, i) => {
        const before = inOrder[i - 1];
        return before !== undefined && before.startMs + before.durationMs + 100 > clip.startMs;
      });
      expect(overlaps).toEqual([]);
      const last = inOrder.at(-1);
      const fileMs = (statSync(`public/clips/${file}`).size * 8) / 24;
      expect((last?.startMs ?? 0) + (last?.durationMs ?? 0)).toBeLessThan(fileMs);
    }
  });

  it("keep every announcement short enough to listen to", () => {
    const single = everything(language).filter((utterance) => utterance.parts.length < 20);
    const tooLong = single.filter((utterance) => durationMs(utterance, manifest) > 25_000).map(textOf);
    expect(tooLong).toEqual([]);
  });

  it("need at most the phrasebook, the shared file and one protocol's own for a session", () => {
    const book = bookFor(language);
    const protocol = bundledProtocols[0];
    const steps = protocol ? everyStep(protocol).map(({ step }) => sayStep(book, [step], "careful")) : [];
    const files = new Set([...steps, saySoundCheck(book)].flatMap((utterance) => filesOf(utterance, manifest)));
    expect(files.size).toBeLessThanOrEqual(3);
  });
});
