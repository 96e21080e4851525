/**
 * From the exact amount to what a measuring cup can show: stock rounded up to a step, never down, with the strength
 * that really results. Rounding down is how published recipes end below their own target.
 */
import { type Ratio, ratio, roundUpTo } from "../sums/ratio";
import type { Mix } from "./mix";
import { type Strength, strength } from "./units";

export type Measured = {
  /** mL of liquid stock, grams of powder, or tablets. */
  readonly stock: Ratio;
  readonly resulting: Strength<"gramsPerLitre"> | Strength<"percentVolume">;
};

/** Sensible steps: 1 mL, or 0.1 mL below 10 mL of stock; 0.1 g. */
export function stepFor(mix: Mix): Ratio {
  if (mix.kind === "tablet") return ratio(1);
  if (mix.kind === "powder") return ratio(1, 10);
  return (mix.kind === "liquid" ? mix.madeUpTo.stockMl : mix.stockMl).lt(10) ? ratio(1, 10) : ratio(1);
}

/** Made up to the total. Stock is never more than the whole bottle. */
export function measuredUp(mix: Mix, step: Ratio): Measured {
  if (mix.kind === "tablet") return { stock: mix.exactTablets.ceil(), resulting: mix.resulting };
  if (mix.kind === "powder") {
    const grams = roundUpTo(mix.grams, step);
    return { stock: grams, resulting: scaled(mix.resulting, grams, mix.grams) };
  }
  const exact = mix.kind === "liquid" ? mix.madeUpTo.stockMl : mix.stockMl;
  const total = mix.kind === "liquid" ? mix.madeUpTo.totalMl : mix.totalMl;
  const rounded = roundUpTo(exact, step);
  const stock = rounded.gt(total) ? total : rounded;
  const resulting = mix.kind === "liquid" ? mix.madeUpTo.resulting : mix.resulting;
  return { stock, resulting: scaled(resulting, stock, exact) };
}

function scaled<Unit extends "gramsPerLitre" | "percentVolume">(s: Strength<Unit>, now: Ratio, exact: Ratio) {
  return strength(s.unit, s.amount.mul(now).div(exact));
}
