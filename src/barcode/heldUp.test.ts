import { expect, test } from "vitest";
import { asEvent } from "./asEvent";
import { awayMs, lookAt, nothingHeld } from "./heldUp";
import type { Seen } from "./packCode";

const box: Seen = { symbology: "]d2", text: "01095212345432131728013110N-204" };
const other: Seen = { symbology: "]d2", text: "01095212345432131728013110N-300" };
const till: Seen = { symbology: "]E0", text: "9521234543213" };

/** Pictures a fifth of a second apart; what was told, in order. */
const shown = (...pictures: readonly (readonly Seen[])[]): readonly string[] => {
  let held = nothingHeld;
  return pictures.flatMap((seen, i) => {
    const { next, told } = lookAt(held, seen, i * 200);
    held = next;
    return told ? [told.text] : [];
  });
};
const times = (count: number, picture: readonly Seen[]) => Array.from({ length: count }, () => picture);

test("a code counts once it was seen alike in two pictures running", () => {
  expect(shown([box])).toEqual([]);
  expect(shown([box], [other], [box])).toEqual([]);
  expect(shown([box], [box])).toEqual([box.text]);
});

test("held up for long, or lost from sight for a moment, it is told once", () => {
  expect(shown(...times(20, [box]), [], [], ...times(5, [box]))).toEqual([box.text]);
});

test("out of sight for a while and held up again, it is told again", () => {
  const away = times(Math.ceil(awayMs / 200) + 1, []);
  expect(shown([box], [box], ...away, [box], [box])).toEqual([box.text, box.text]);
});

test("another box held up is told at once", () => {
  expect(shown([box], [box], [other], [other])).toEqual([box.text, other.text]);
});

test("of two codes on one box the one with the lot is meant", () => {
  expect(shown([till, box], [box, till])).toEqual([box.text]);
});

test.each([
  [box, { type: "lot.shown", lot: "N-204", expiry: "2028-01-31" }],
  [till, { type: "code.refused", why: "codeWithoutLot" }],
  [
    { symbology: "]d2", text: "010952123454321310ABC12317251231" },
    { type: "code.refused", why: "codeUnsure" },
  ],
  [
    { symbology: "]Q1", text: "hello" },
    { type: "code.refused", why: "codeUnreadable" },
  ],
  [
    { symbology: "]d2", text: "010952123454321410A1" },
    { type: "code.refused", why: "codeUnreadable" },
  ],
])("%j becomes %j", (seen, event) => {
  expect(asEvent(seen, 2026)).toEqual(event);
});
