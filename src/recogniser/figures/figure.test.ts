import { describe, expect, test } from "vitest";
import { figureTable, least, most, verdictOf } from "./figure";
import { falseActions, figuresOf, heardRight, isRight, isWrong, type Outcome } from "./outcome";

const clip = (change: Partial<Outcome>): Outcome => ({
  condition: "clean",
  speaker: "one",
  said: "again",
  acted: ["again"],
  asked: 0,
  soundMs: 3_600_000,
  ...change,
});

describe("figures of the ear", () => {
  test("count a phrase as heard right only when nothing else was acted on", () => {
    expect(isRight(clip({}))).toBe(true);
    expect(isRight(clip({ acted: ["again", "undo"] }))).toBe(false);
    expect(isRight(clip({ acted: [] }))).toBe(false);
    expect(isWrong(clip({ acted: [] }))).toBe(false);
    expect(isWrong(clip({ said: null }))).toBe(true);
  });

  test("do not take a few clips that all went well for certainty", () => {
    const four = heardRight("heard", [clip({}), clip({}), clip({}), clip({})], null);
    // None of four missed: exact two-sided 95 % lower bound 0.025^(1/4) (Clopper and Pearson).
    expect(four.low).toBeCloseTo(100 * 0.025 ** (1 / 4), 3);
    expect(four.high).toBe(100);
  });

  test("hold a rate against its upper bound, not against the luck of a short run", () => {
    const none = falseActions("false actions", [clip({ said: null, acted: [] })], most(0.3, "high"));
    expect(none.value).toBe(0);
    expect(none.high).toBeCloseTo(2.9957, 3); // no event in one hour: Poisson, tables
    expect(verdictOf(none)).toBe("not shown");
    const long = falseActions("false actions", [clip({ said: null, acted: [], soundMs: 36e6 })], most(0.3, "high"));
    expect(verdictOf(long)).toBe("met");
    const often = falseActions("false actions", [clip({ said: null })], most(0.3, "high"));
    expect(verdictOf(often)).toBe("missed");
  });

  test("say of a bar whether it was met, and nothing where nothing was measured", () => {
    expect(verdictOf(heardRight("heard", [clip({})], least(98)))).toBe("met");
    expect(verdictOf(heardRight("heard", [clip({ acted: [] })], least(98)))).toBe("missed");
    expect(verdictOf(heardRight("heard", [], least(98)))).toBeNull();
    expect(figureTable([heardRight("heard", [], least(98))]).at(-1)).toContain("not measured");
  });

  test("keep every condition apart, phrases before sound that holds none", () => {
    const what = figuresOf([clip({ said: null, condition: "talk" }), clip({}), clip({ condition: "buzz 10 dB" })]);
    expect(what.map((one) => one.what)).toEqual([
      "heard right, clean",
      "heard right, buzz 10 dB",
      "another phrase acted on",
      "false actions, talk",
      "false actions, all",
    ]);
  });
});
