import { describe, expect, test } from "vitest";
import { type Block, endsIn, firstAfter } from "./tapped";

/** Blocks of 10 ms: loud where a number of the list says so. */
const blocks = (count: number, loud: (at: number) => boolean): readonly Block[] =>
  Array.from({ length: count }, (_, n) => [10 * n, loud(n) ? 0.1 : 0] as const);

describe("what passes by in the page", () => {
  test("ends a phrase at its last loud block, not at a short pause within it", () => {
    const phrase = blocks(400, (n) => (n >= 10 && n < 40) || (n >= 60 && n < 90));
    expect(endsIn(phrase, 0.01, 1500)).toEqual([890]);
  });

  test("takes the first sound after a phrase as its earcon", () => {
    expect(
      firstAfter(
        blocks(400, (n) => n >= 105 && n < 112),
        0.01,
        890,
        1500,
      ),
    ).toBe(1050);
  });

  test("takes nothing where the companion was speaking already, or stayed silent", () => {
    const speaking = blocks(400, (n) => n >= 50 && n < 120);
    expect(firstAfter(speaking, 0.01, 890, 1500)).toBeNull();
    expect(
      firstAfter(
        blocks(400, () => false),
        0.01,
        890,
        1500,
      ),
    ).toBeNull();
  });
});
