import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { addressWords, commandIds, commands } from "../../../src/intent/phrases";
import { seededRandom } from "../../../src/rehearsal/random";
import { holdsPhrase, piecesOf, type SpokenKind } from "./pieces";
import { nearMiss } from "./texts";
import type { TestVoice } from "./voices";

const voices: readonly TestVoice[] = ["a", "b", "c"].map((name) => ({ engine: "flite", name, speaker: name }));
/** More than half a minute holds. */
const count = 80;

function textsOf(kind: SpokenKind, address: (typeof addressWords)[number], seed: number): readonly string[] {
  const next = piecesOf(kind, address, voices, seededRandom(seed));
  return Array.from({ length: count }, () => next().words);
}

/** Written another way than `holdsPhrase`: all that is said in one line, each phrase looked for in it. */
const plain = (text: string) =>
  ` ${text
    .toLowerCase()
    .replace(/[^a-z' ]/g, "")
    .replace(/ +/g, " ")} `;

describe("what is said in a stretch", () => {
  property.prop([fc.nat(), fc.constantFrom(...addressWords), fc.constantFrom("talk", "near misses", "neighbour")], {
    numRuns: 600,
  })("never holds a phrase of this station, not even across pieces", (seed, address, kind) => {
    const all = plain(textsOf(kind, address, seed).join(" "));
    const phrases = commandIds.map((id) => plain(`${address} ${commands[id]}`));
    expect(phrases.filter((phrase) => all.includes(phrase))).toEqual([]);
  });

  test("would hold some if near misses were drawn without regard to those before", () => {
    const held = Array.from({ length: 100 }, (_, seed) => {
      const random = seededRandom(seed);
      return holdsPhrase(Array.from({ length: count }, () => nearMiss("station", random)).join(" "), "station");
    });
    expect(held.filter(Boolean).length).toBeGreaterThan(20);
  });

  test("finds a phrase across pieces, whatever the punctuation", () => {
    expect(holdsPhrase("my station; Hold, everything!", "station")).toBe(true);
    expect(holdsPhrase("station there's a problem", "station")).toBe(true);
    expect(holdsPhrase("station hold on everything", "station")).toBe(false);
    expect(holdsPhrase("workstation hold everything", "station")).toBe(false);
    expect(holdsPhrase("workbench hold everything", "station")).toBe(false);
  });

  test("keeps whole commands without an address at their share of near misses, though some have to wait", () => {
    const whole = new Set<string>(Object.values(commands));
    const share = (texts: readonly string[]) => texts.filter((text) => whole.has(text)).length / texts.length;
    const random = seededRandom(5);
    const drawn = Array.from({ length: 100 * count }, () => nearMiss("station", random));
    const said = Array.from({ length: 100 }, (_, seed) => textsOf("near misses", "station", seed)).flat();
    expect(share(said)).toBeGreaterThan(share(drawn) - 0.01);
    expect(share(said)).toBeLessThan(share(drawn) + 0.01);
  });

  property.prop([fc.nat(), fc.constantFrom(...addressWords)])(
    "is, by a neighbour, always a whole phrase of another station",
    (seed, address) => {
      const others = addressWords.filter((word) => word !== address);
      for (const words of textsOf("neighbour", address, seed)) {
        expect(others.some((word) => holdsPhrase(words, word))).toBe(true);
      }
    },
  );
});
