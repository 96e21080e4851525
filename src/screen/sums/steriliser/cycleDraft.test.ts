/** The cycle form: silent until filled in, the verdict of the same rules, and refusals that name the field. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { type CycleDraft, cycleFrom, emptyCycle } from "./cycleDraft";

const from = (change: Partial<CycleDraft>) => cycleFrom({ ...emptyCycle, ...change }, (field) => field);
const hand = { how: "hand", coolest: "134,5", hottest: "136", minutes: "3.5" } as const;

describe("the cycle form", () => {
  it("says nothing until there is something to judge", () => {
    expect(from({})).toBeNull();
    expect(from({ ...hand, minutes: " " })).toBeNull();
  });

  it("judges what was read off the display, with a comma or a point", () => {
    expect(from(hand)).toMatchObject({ ok: true, value: { accepted: true, verdict: { known: "said" } } });
    expect(from({ ...hand, coolest: "133.9" })).toMatchObject({ ok: true, value: { accepted: false } });
  });

  it("judges a file by the gap and the F0 that were chosen", () => {
    const csv = "time_s,temperature_c\n0,135\n90,135\n180,135\n";
    expect(from({ csv })).toMatchObject({ value: { verdict: { code: "not-held", mostGapMs: 60_000 } } });
    expect(from({ csv, gapSec: "90", zK: "9,5" })).toMatchObject({
      value: { verdict: { code: "held", lethality: { zK: 9.5, referenceC: 121.1 } } },
    });
  });

  it.each([
    [{ ...hand, coolest: "hot" }, "coolest"],
    [{ ...hand, minutes: "-3" }, "minutes"],
    [{ ...hand, kPaAbs: "4000" }, "kPaAbs"],
    [{ ...hand, zK: "0" }, "zK"],
    [{ ...hand, coolest: "137" }, "hotter than the hottest"],
    [{ ...hand, load: [] }, "loaded"],
  ])("names what is wrong in %j", (change, named) => {
    expect(from(change)).toMatchObject({ ok: false, words: expect.stringContaining(named) });
  });

  const text = fc.string({ maxLength: 10 });
  property.prop([fc.record({ coolest: text, hottest: text, minutes: text, kPaAbs: text, zK: text, gapSec: text })])(
    "accepts nothing out of nonsense",
    (typed) => {
      const found = from({ how: "hand", ...typed });
      const isSense = Number(typed.coolest) >= 134 && Number(typed.hottest) <= 137;
      if (found?.ok && found.value.accepted) expect(isSense).toBe(true);
    },
  );
});
