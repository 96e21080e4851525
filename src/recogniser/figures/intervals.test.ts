import { describe, expect, test } from "vitest";
import { bootstrapped, poissonUpper, quantile, shareUpper } from "./intervals";

describe("intervals", () => {
  // Garwood 1936, one-sided 95 %: half of chi-squared with 2(n + 1) degrees of freedom (tables: 5.991, 9.488, 21.026).
  test.each([
    [0, 2.9957],
    [1, 4.7439],
    [5, 10.513],
  ])("bound a count of %i events by what chi-squared tables say", (count, bound) => {
    expect(poissonUpper(count)).toBeCloseTo(bound, 3);
  });

  // None of n: 1 − 0.05^(1/n), the exact form; 5 of 10: 0.7776 (Clopper and Pearson's charts; scipy.stats.beta.ppf(.95, 6, 5)).
  test("bound a share exactly, also where nothing was seen", () => {
    expect(shareUpper(0, 100)).toBeCloseTo(1 - 0.05 ** (1 / 100), 6);
    expect(shareUpper(5, 10)).toBeCloseTo(0.7776, 3);
    expect(shareUpper(3, 3)).toBe(1);
  });

  test("are wider when speakers differ than when each is like the others", () => {
    const [, lowDiffering, highDiffering] = bootstrapped([
      [1, 1, 1, 1],
      [0, 0, 0, 0],
      [1, 1, 1, 1],
      [0, 0, 0, 0],
    ]);
    const [, lowAlike, highAlike] = bootstrapped([
      [1, 0, 1, 0],
      [1, 0, 1, 0],
      [1, 0, 1, 0],
      [1, 0, 1, 0],
    ]);
    expect(highDiffering - lowDiffering).toBeGreaterThan(highAlike - lowAlike);
  });

  test("take the value that most do not exceed", () => {
    expect(quantile([5, 1, 4, 2, 3], 0.95)).toBe(5);
    expect(quantile([5, 1, 4, 2, 3], 0.5)).toBe(3);
  });
});
