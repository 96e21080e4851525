/** Do temperature and pressure belong to the same steam? Checked on the readings of the hold. */
import type { Reading } from "./reading";
import { saturationCelsius } from "./steam";

export type SteamCheck = {
  /** `air`: cooler than steam of this pressure would be. `superheat`: hotter. `unknown`: no pressure was recorded. */
  readonly finding: "saturated" | "air" | "superheat" | "unknown";
  /** Measured minus saturation temperature, the reading furthest off; null when unknown. */
  readonly worstK: number | null;
  readonly toleranceK: number;
};

/** Two kelvin either way, from memory of the small-steriliser standards; the maker's figure outranks it. */
export const defaultToleranceK = 2;

/** Air outweighs superheat: if any reading shows air, that is the finding. */
export function checkSteam(readings: readonly Reading[], toleranceK = defaultToleranceK): SteamCheck {
  const offK = readings.flatMap(({ celsius, kPaAbs }) => {
    const saturated = kPaAbs === null ? null : saturationCelsius(kPaAbs);
    return saturated === null ? [] : [celsius - saturated];
  });
  if (offK.length === 0) return { finding: "unknown", worstK: null, toleranceK };
  const coolest = offK.reduce((a, b) => Math.min(a, b));
  const hottest = offK.reduce((a, b) => Math.max(a, b));
  if (coolest < -toleranceK) return { finding: "air", worstK: coolest, toleranceK };
  if (hottest > toleranceK) return { finding: "superheat", worstK: hottest, toleranceK };
  return { finding: "saturated", worstK: -coolest > hottest ? coolest : hottest, toleranceK };
}
