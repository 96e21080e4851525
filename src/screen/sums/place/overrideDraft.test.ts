/** The studio's own line: every line of every place can be put otherwise, and comes back as it was where nothing changed. */
import { describe, expect, it } from "vitest";
import { LineValue, type PlaceLine } from "../../../places/line";
import { places, withOverrides } from "../../../places/profiles";
import { type OverrideDraft, overrideDraftOf, overrideFrom } from "./overrideDraft";

const lines = places.flatMap((place) => place.lines.map((line) => ({ place, line })));
const from = (line: PlaceLine, change: Partial<OverrideDraft> = {}) =>
  overrideFrom({ ...overrideDraftOf(line), reason: "house rule", ...change }, line);

describe("the studio's own line", () => {
  it.each(lines.filter(({ line }) => line.value !== null))("$place.id $line.id comes back as it was", ({ line }) => {
    expect(from(line)).toEqual({ ok: true, value: line.value, reason: "house rule" });
  });

  it.each(lines)("$place.id $line.id takes the studio's own value", ({ place, line }) => {
    const filled = { number: "3", words: "our own: date", colour: "yellow", route: "contractor" };
    const own = from(line, filled);
    if (!own.ok) return expect.fail(own.trouble);
    expect(LineValue.safeParse(own.value).success).toBe(true);
    const { value, reason } = own;
    expect(withOverrides(place, [{ lineId: line.id, value, reason, year: 2026 }]).ok).toBe(true);
  });

  it.each(lines.filter(({ line }) => line.value === null))("$place.id $line.id is not guessed", ({ line }) => {
    expect(from(line).ok).toBe(false);
  });

  it("needs a reason", () => {
    const [first] = lines;
    expect(first && from(first.line, { reason: " " })).toEqual({ ok: false, trouble: "reason" });
  });

  it.each(["", "-1", "soon", "1.5", "900"])("does not take %j for an age", (number) => {
    const age = lines.find(({ line }) => line.value?.kind === "age");
    expect(age && from(age.line, { number })).toEqual({ ok: false, trouble: "notANumber" });
  });
});
