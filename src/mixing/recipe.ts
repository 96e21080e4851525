/**
 * What a recipe found on a poster or a page really makes. The same arithmetic backwards: amounts in, strength out,
 * so that a recipe can be held against its own claim before anyone trusts it.
 */
import type { Ratio } from "../sums/ratio";
import { type ChlorineUnit, type Strength, strength, toGramsPerLitre, type Volume } from "./units";

/** Stock poured into a volume of water; the volumes add. */
export function strengthAddedTo(
  stock: Strength<ChlorineUnit>,
  poured: Volume,
  water: Volume,
): Strength<"gramsPerLitre"> {
  return strength("gramsPerLitre", toGramsPerLitre(stock).amount.mul(poured.ml).div(poured.ml.add(water.ml)));
}

/** Stock topped up to a total volume. */
export function strengthMadeUpTo(
  stock: Strength<ChlorineUnit>,
  poured: Volume,
  total: Volume,
): Strength<"gramsPerLitre"> {
  return strength("gramsPerLitre", toGramsPerLitre(stock).amount.mul(poured.ml).div(total.ml));
}

/** Powder dissolved in a volume; its own volume is left out, as the published formula does. */
export function strengthOfPowder(percentMass: Ratio, grams: Ratio, total: Volume): Strength<"gramsPerLitre"> {
  return strength("gramsPerLitre", percentMass.div(100).mul(grams).div(total.ml).mul(1000));
}

export type Verdict = {
  readonly meets: boolean /** What is made over what was promised; 1 is exact. */;
  readonly share: Ratio;
};

/** Does what is made reach what was promised? Weaker is "no", however little. */
export function against(promised: Strength<ChlorineUnit>, made: Strength<ChlorineUnit>): Verdict {
  const share = toGramsPerLitre(made).amount.div(toGramsPerLitre(promised).amount);
  return { meets: share.gte(1), share };
}
