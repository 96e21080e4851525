/** Short times: what is read, what is not guessed. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { readSeconds, readWhole, showSeconds } from "./seconds";

describe("short times", () => {
  it.each([
    ["5 min", 300],
    ["90 s", 90],
    ["1 min 30 s", 90],
    ["1:30", 90],
    ["0.5 min", 30],
    ["2,5 minutes", 150],
    ["45sec", 45],
  ])("reads %j as %i seconds", (text, seconds) => expect(readSeconds(text)).toBe(seconds));

  it.each(["5", "", "soon", "1:75", "-3 min", "0.001 min", "5 min or so"])("does not guess %j", (text) =>
    expect(readSeconds(text)).toBeNull(),
  );

  property.prop([fc.integer({ min: 0, max: 59_999 })])("reads what it shows", (seconds) => {
    expect(readSeconds(showSeconds(seconds))).toBe(seconds);
  });

  it("reads whole numbers only", () => {
    expect(readWhole(" 12 ")).toBe(12);
    expect([readWhole("1.5"), readWhole("-1"), readWhole("")]).toEqual([null, null, null]);
  });
});
