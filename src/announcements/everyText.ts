/** Every text that can be spoken as one part: what the clips must cover. */
import { addedTexts } from "../session/addedSteps";
import { everyStep, type Protocol } from "../session/protocol";
import { clipKey } from "./clips";
import { piecesOf } from "./fill";
import type { Phrasebook } from "./phrasebook";
import { wordsOf } from "./phrasebooks";

/** Highest number with a clip of its own; above it, word by word. */
const numbersTo = 60;
const longestDurationSec = 3_601;

/** Fixed pieces of all sentences, numbers, durations, letters and code words. */
export function phrasebookTexts(book: Phrasebook): readonly string[] {
  const { letters, spelling, ...rest } = book;
  const numbers = Array.from({ length: numbersTo + 1 }, (_, value) => book.number(value));
  const tens = [70, 80, 90].map((value) => book.number(value));
  const durations = Array.from({ length: longestDurationSec }, (_, sec) => book.duration((sec + 1) * 1_000));
  return distinct([
    ...leavesOf({ ...rest, language: "" }).flatMap((sentence) =>
      piecesOf(sentence).filter((_, place) => place % 2 === 0),
    ),
    ...numbers,
    ...tens,
    ...durations,
    ...Object.values(letters),
    ...Object.values(spelling),
  ]);
}

/** Sentences, cautions and names of a protocol, its products' among them. */
export const protocolTexts = (protocol: Protocol, book: Phrasebook): readonly string[] => {
  const steps = everyStep(protocol).flatMap(({ step }) => (step.caution ? [step.say, step.caution] : [step.say]));
  const items = protocol.items.map(({ calledAs }) => calledAs);
  const products = protocol.products.map(({ label }) => label.name);
  return distinct([...steps, ...addedTexts, ...items, ...products].map((text) => wordsOf(text, book)));
};

/** Single words of some texts, for sentences that the artist changes. */
export const singleWords = (texts: readonly string[]): readonly string[] =>
  distinct(texts.flatMap((text) => clipKey(text).split(/[\s.,:;!?¿¡/-]+/)));

function leavesOf(node: unknown): readonly string[] {
  if (typeof node === "string") return [node];
  return typeof node === "object" && node !== null ? Object.values(node).flatMap(leavesOf) : [];
}

/** One text for each clip, the first spelling kept. */
function distinct(texts: readonly string[]): readonly string[] {
  const byKey = new Map<string, string>();
  for (const text of texts) {
    const key = clipKey(text);
    if (key !== "" && !byKey.has(key)) byKey.set(key, text.trim());
  }
  return [...byKey.values()];
}
