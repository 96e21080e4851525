/**
 * F0: minutes at the reference temperature that would kill as much. It stands beside the verdict on the band and never
 * in its place. The number is worthless without its method, reference temperature and z, so it never travels alone.
 */
import type { Reading } from "./reading";

/** `exactRamp` takes temperature as straight between readings and integrates; it never exceeds `trapezoid`. */
export const lethalityMethods = ["exactRamp", "trapezoid", "leftRectangle"] as const;
export type LethalityMethod = (typeof lethalityMethods)[number];

export type LethalityChoice = {
  readonly method: LethalityMethod;
  /** 121.1 °C, 121.11 °C (250 °F exactly) and 121.0 °C are all in use; they differ by up to 2.3 %. */
  readonly referenceC: number;
  readonly zK: number;
};

export type Lethality = LethalityChoice & { readonly minutes: number };

export const defaultLethality: LethalityChoice = { method: "exactRamp", referenceC: 121.1, zK: 10 };

/** Minutes of effect per minute at one temperature: 10^((T - Tref)/z). */
export function rate(celsius: number, { referenceC, zK }: Pick<LethalityChoice, "referenceC" | "zK">): number {
  return 10 ** ((celsius - referenceC) / zK);
}

/** F0 over all readings; 0 for fewer than two. */
export function lethality(readings: readonly Reading[], choice: LethalityChoice = defaultLethality): Lethality {
  let minutes = 0;
  for (const [index, to] of readings.entries()) {
    const from = readings[index - 1];
    if (from) minutes += ((to.tMs - from.tMs) / 60_000) * meanRate(from.celsius, to.celsius, choice);
  }
  return { ...choice, minutes };
}

/** Minutes at a constant temperature for a wanted F0. */
export function minutesFor(f0Minutes: number, celsius: number, choice: LethalityChoice = defaultLethality): number {
  return f0Minutes / rate(celsius, choice);
}

/** Powers of ten fewer survivors: F0 / D. A D-value belongs to one organism, so it is always an input. */
export function logReduction(f0Minutes: number, d121Minutes: number): number {
  return f0Minutes / d121Minutes;
}

function meanRate(fromC: number, toC: number, choice: LethalityChoice): number {
  const start = rate(fromC, choice);
  switch (choice.method) {
    case "leftRectangle":
      return start;
    case "trapezoid":
      return (start + rate(toC, choice)) / 2;
    case "exactRamp": {
      // integral of an exponential along a straight ramp; expm1 keeps it right for ramps that are almost flat
      const x = (Math.LN10 * (toC - fromC)) / choice.zK;
      return x === 0 ? start : (start * Math.expm1(x)) / x;
    }
  }
}
