/** F0 = sum of dt x 10^((T - Tref)/z), z = 10 K, held against tables worked from that formula. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { type LethalityMethod, lethality, logReduction, minutesFor, rate } from "./lethality";
import type { Reading } from "./reading";

const at = (referenceC: number, method: LethalityMethod = "exactRamp") => ({ method, referenceC, zK: 10 });

function readings(minutes: readonly number[], celsius: readonly number[]): Reading[] {
  return minutes.map((minute, i) => ({ tMs: minute * 60_000, celsius: celsius[i] ?? Number.NaN, kPaAbs: null }));
}

const count = (n: number, step = 1) => Array.from({ length: n }, (_, i) => i * step);

const profiles = {
  P1: readings(count(11), [100, 110, 118, 121.1, 121.1, 121.1, 121.1, 121.1, 118, 110, 100]),
  P2: readings(count(11, 0.5), [120, 130, 134, 134.5, 134.8, 134.6, 134.5, 134.3, 130, 120, 105]),
  P3: readings([0, 2, 3, 5, 5.5, 9, 10, 12], [95, 115, 121, 123, 122, 121.5, 112, 90]),
  P4: readings(count(7), [134, 134, 134, 128, 134, 134, 134]),
  P5: readings([0, 10], [111.1, 121.1]),
  P6: readings([0, 15], [121.1, 121.1]),
};

describe("the rate at one temperature", () => {
  // Formula with Tref 121.1 (common), 121.11 (250 °F exactly) and 121.0 (European Pharmacopoeia); 6 decimals.
  test.each([
    [100, "0.007762", "0.007745", "0.007943"],
    [110, "0.077625", "0.077446", "0.079433"],
    [111.1, "0.100000", "0.099770", "0.102329"],
    [115, "0.245471", "0.244906", "0.251189"],
    [118, "0.489779", "0.488652", "0.501187"],
    [121, "0.977237", "0.974990", "1.000000"],
    [121.1, "1.000000", "0.997700", "1.023293"],
    [124, "1.949845", "1.945360", "1.995262"],
    [126, "3.090295", "3.083188", "3.162278"],
    [129, "6.165950", "6.151769", "6.309573"],
    [131.1, "10.000000", "9.977001", "10.232930"],
    [132, "12.302688", "12.274392", "12.589254"],
    [134, "19.498446", "19.453601", "19.952623"],
    [135, "24.547089", "24.490632", "25.118864"],
    [137, "38.904514", "38.815037", "39.810717"],
  ])("%d °C: %s at Tref 121.1, %s at 121.11, %s at 121.0", (celsius, ...expected) => {
    expect([121.1, 121.11, 121].map((referenceC) => rate(celsius, at(referenceC)).toFixed(6))).toEqual(expected);
  });

  it("depends on which of the three references is meant, by a factor of 1.0023 and 1.0233", () => {
    expect((rate(134, at(121.1)) / rate(134, at(121.11))).toFixed(4)).toBe("1.0023");
    expect((rate(134, at(121)) / rate(134, at(121.1))).toFixed(4)).toBe("1.0233");
  });
});

describe("a constant temperature", () => {
  test.each([
    [121, 15, "14.6586", "15.0000"],
    [121, 30, "29.3171", "30.0000"],
    [126, 10, "30.9030", "31.6228"],
    [132, 4, "49.2108", "50.3570"],
    [132, 15, "184.5403", "188.8388"],
    [134, 3, "58.4953", "59.8579"],
    [134, 3.5, "68.2446", "69.8342"],
    [134, 18, "350.9720", "359.1472"],
    [115, 30, "7.3641", "7.5357"],
    [111, 15, "1.4659", "1.5000"], // the published example prints 1.5, with Tref 121.0
    [124, 15, "29.2477", "29.9289"],
    [111.1, 15, "1.5000", "1.5349"],
    [131.1, 1.5, "15.0000", "15.3494"],
  ])("%d °C for %d min: F0 %s (121.1) or %s (121.0), 4 decimals", (celsius, minutes, f121_1, f121) => {
    const plateau = readings([0, minutes], [celsius, celsius]);
    expect(lethality(plateau, at(121.1)).minutes.toFixed(4)).toBe(f121_1);
    expect(lethality(plateau, at(121)).minutes.toFixed(4)).toBe(f121);
  });

  test.each([
    [115, "61.1070"],
    [121, "15.3494"],
    [121.1, "15.0000"],
    [124, "7.6929"],
    [126, "4.8539"],
    [132, "1.2192"],
    [134, "0.7693"],
    [135, "0.6111"],
  ])("F0 15 takes, at %d °C, %s min", (celsius, minutes) => {
    expect(minutesFor(15, celsius).toFixed(4)).toBe(minutes);
  });
});

describe("a cycle", () => {
  // Computed independently from the formula: mean of end rates, left rate, and the exact integral of a straight ramp; 6 decimals.
  test.each([
    ["P1", "6.142570", "6.142570", "5.937761"],
    ["P2", "73.338863", "73.526788", "71.014700"],
    ["P3", "8.885468", "8.627736", "8.369863"],
    ["P4", "102.390018", "102.390018", "99.130401"],
    ["P5", "5.500000", "1.000000", "3.908650"],
    ["P6", "15.000000", "15.000000", "15.000000"],
  ] as const)("%s: trapezoid %s, left rectangle %s, exact ramp %s", (id, ...expected) => {
    const methods = ["trapezoid", "leftRectangle", "exactRamp"] as const;
    expect(methods.map((method) => lethality(profiles[id], at(121.1, method)).minutes.toFixed(6))).toEqual(expected);
  });

  it("is over-read by 41 % by the trapezoid on one coarse ramp (P5)", () => {
    const ratio = lethality(profiles.P5, at(121.1, "trapezoid")).minutes / lethality(profiles.P5, at(121.1)).minutes;
    expect(ratio.toFixed(2)).toBe("1.41");
  });

  it("keeps method, reference and z with the number", () => {
    expect(lethality(profiles.P6)).toEqual({ minutes: 15, method: "exactRamp", referenceC: 121.1, zK: 10 });
  });

  it("reduces survivors by F0 / D powers of ten", () => {
    expect(logReduction(15, 1.5)).toBe(10);
    expect([1, 1.5, 2].map((d) => logReduction(12 * d, d))).toEqual([12, 12, 12]);
  });
});

const anyCycle = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 120_000 }), fc.double({ min: 20, max: 140, noNaN: true })), {
    minLength: 1,
    maxLength: 60,
  })
  .map((steps) => {
    let tMs = 0;
    return steps.map(([dt, celsius]): Reading => {
      tMs += dt;
      return { tMs, celsius, kPaAbs: null };
    });
  });
const anyMethod = fc.constantFrom<LethalityMethod>("exactRamp", "trapezoid", "leftRectangle");

describe("for every cycle", () => {
  property.prop([anyCycle, anyMethod, fc.nat(60)])(
    "F0 of the whole is F0 of its parts added up",
    (cycle, method, cut) => {
      const whole = lethality(cycle, at(121.1, method)).minutes;
      const parts =
        lethality(cycle.slice(0, cut + 1), at(121.1, method)).minutes +
        lethality(cycle.slice(cut), at(121.1, method)).minutes;
      expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * Math.max(1, whole));
    },
  );

  property.prop([anyCycle, anyMethod, fc.nat(59), fc.double({ min: 0, max: 20, noNaN: true })])(
    "a hotter reading never lowers F0",
    (cycle, method, which, more) => {
      const hotter = cycle.map((reading, i) =>
        i === which % cycle.length ? { ...reading, celsius: reading.celsius + more } : reading,
      );
      expect(lethality(hotter, at(121.1, method)).minutes).toBeGreaterThanOrEqual(
        lethality(cycle, at(121.1, method)).minutes * (1 - 1e-12),
      );
    },
  );

  property.prop([anyCycle])("the exact ramp never exceeds the trapezoid", (cycle) => {
    expect(lethality(cycle, at(121.1)).minutes).toBeLessThanOrEqual(
      lethality(cycle, at(121.1, "trapezoid")).minutes * (1 + 1e-12),
    );
  });
});
