/**
 * How much stock makes the strength asked for. Everything is exact: the active substance that goes in is the active
 * substance in the bottle. "Added to" keeps the water, "made up to" keeps the total, and the two are never the same.
 */
import { answer, refuse } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { type Ratio, ratio, showRatio, zero } from "../sums/ratio";
import type { MixAnswer } from "./refusals";
import {
  type AlcoholUnit,
  type ChlorineUnit,
  type PowderUnit,
  type Strength,
  strength,
  toGramsPerLitre,
  toPercentVolume,
  type Volume,
} from "./units";

export type MixRequest =
  | LiquidRequest
  | PowderRequest
  | TabletRequest
  | { kind: "alcohol"; stock: Strength<AlcoholUnit>; target: Strength<AlcoholUnit>; volume: Volume };

type LiquidRequest = { kind: "liquid"; stock: Strength<ChlorineUnit>; target: Strength<ChlorineUnit>; volume: Volume };
type PowderRequest = { kind: "powder"; stock: Strength<PowderUnit>; target: Strength<ChlorineUnit>; volume: Volume };
/** The active chlorine in one tablet differs by maker, so it is always asked for. */
type TabletRequest = { kind: "tablet"; gramsPerTablet: Ratio; target: Strength<ChlorineUnit>; volume: Volume };

/** One way of making it up. `resulting` is what the bottle then holds. */
export type LiquidAmounts = {
  readonly stockMl: Ratio;
  readonly waterMl: Ratio;
  readonly totalMl: Ratio;
  readonly resulting: Strength<"gramsPerLitre">;
};

export type Mix =
  | {
      readonly kind: "liquid";
      /** Parts of water to one part of stock: C/D - 1 (CDC/ICAN App. E, examples 1 and 3). */
      readonly partsWater: Ratio;
      /** The volume asked for is the water; null when the stock is already at the target and takes no water. */
      readonly addedTo: LiquidAmounts | null;
      /** The volume asked for is the finished mix. */
      readonly madeUpTo: LiquidAmounts;
    }
  | {
      readonly kind: "powder";
      readonly grams: Ratio;
      readonly totalMl: Ratio;
      readonly resulting: Strength<"gramsPerLitre">;
    }
  | {
      readonly kind: "tablet";
      readonly tablets: bigint;
      /** Before rounding up to whole tablets. */
      readonly exactTablets: Ratio;
      readonly totalMl: Ratio;
      readonly resulting: Strength<"gramsPerLitre">;
    }
  | {
      readonly kind: "alcohol";
      readonly stockMl: Ratio;
      /** Topped up to this; no amount of water is given, because alcohol and water contract when they meet. */
      readonly totalMl: Ratio;
      readonly resulting: Strength<"percentVolume">;
    };

/** No bottle here is larger than this; beyond it a slip of the unit is likelier. */
export const mostMl = ratio(1_000_000);

/**
 * Amounts for one mix, exact.
 * Refuses `not-positive`, `strength-impossible`, `target-above-stock`, `too-much`.
 * Powder grams per litre = D/C × 1000 (CDC/ICAN App. E, example 2); tablets are whole, rounded up.
 */
export function mix(request: MixRequest): MixAnswer<Mix> {
  const volume = request.volume.ml;
  if (volume.lte(0)) return refuse("not-positive", (say) => say.mixing.refusals.volumeNothing);
  if (volume.gt(mostMl)) return refuse("too-much", (say) => say.mixing.refusals.volumeTooMuch);
  switch (request.kind) {
    case "liquid":
      return mixLiquid(request, volume);
    case "powder":
      return mixPowder(request, volume);
    case "tablet":
      return mixTablets(request, volume);
    case "alcohol":
      return mixAlcohol(toPercentVolume(request.stock).amount, toPercentVolume(request.target).amount, volume);
  }
}

function mixLiquid(request: LiquidRequest, volume: Ratio): MixAnswer<Mix> {
  const stock = toGramsPerLitre(request.stock).amount;
  const target = toGramsPerLitre(request.target).amount;
  const trouble = check(stock, target, gramsInOneLitre, (g) => `${showRatio(g.div(10))} %`);
  if (trouble) return trouble;
  const resulting = strength("gramsPerLitre", target);
  const share = target.div(stock);
  const stockMl = volume.mul(share);
  const beside = stock.equals(target) ? null : volume.mul(target).div(stock.sub(target));
  return answer({
    kind: "liquid",
    partsWater: stock.div(target).sub(1),
    addedTo: beside && { stockMl: beside, waterMl: volume, totalMl: volume.add(beside), resulting },
    madeUpTo: { stockMl, waterMl: volume.sub(stockMl), totalMl: volume, resulting },
  });
}

function mixPowder(request: PowderRequest, volume: Ratio): MixAnswer<Mix> {
  const perGram = request.stock.amount.div(100);
  const target = toGramsPerLitre(request.target).amount;
  const trouble = check(perGram.mul(1000), target, gramsInOneLitre, (g) => `${showRatio(g.div(10))} %`);
  if (trouble) return trouble;
  const grams = target.mul(volume).div(1000).div(perGram);
  return answer({ kind: "powder", grams, totalMl: volume, resulting: strength("gramsPerLitre", target) });
}

function mixTablets(request: TabletRequest, volume: Ratio): MixAnswer<Mix> {
  const target = toGramsPerLitre(request.target).amount;
  const trouble = check(gramsInOneLitre, target, gramsInOneLitre, (g) => `${showRatio(g.div(10))} %`);
  if (trouble) return trouble;
  if (request.gramsPerTablet.lte(0)) return refuse("not-positive", (say) => say.mixing.refusals.tabletNothing);
  if (request.gramsPerTablet.gt(1000))
    return refuse("strength-impossible", (say) => say.mixing.refusals.tabletTooHeavy);
  const exactTablets = target.mul(volume).div(1000).div(request.gramsPerTablet);
  const tablets = exactTablets.ceil();
  const resulting = tablets.mul(request.gramsPerTablet).div(volume).mul(1000);
  return answer({
    kind: "tablet",
    tablets: tablets.n,
    exactTablets,
    totalMl: volume,
    resulting: strength("gramsPerLitre", resulting),
  });
}

function mixAlcohol(stock: Ratio, target: Ratio, volume: Ratio): MixAnswer<Mix> {
  const trouble = check(stock, target, ratio(100), (percent, say) => say.mixing.refusals.byVolume(showRatio(percent)));
  if (trouble) return trouble;
  return answer({
    kind: "alcohol",
    stockMl: volume.mul(target).div(stock),
    totalMl: volume,
    resulting: strength("percentVolume", target),
  });
}

const gramsInOneLitre = ratio(1000);

function check(stock: Ratio, target: Ratio, most: Ratio, show: (r: Ratio, say: SumPhrases) => string) {
  if (stock.lte(zero) || target.lte(zero)) return refuse("not-positive", (say) => say.mixing.refusals.strengthNothing);
  if (stock.gt(most) || target.gt(most)) return refuse("strength-impossible", (say) => say.mixing.refusals.above100);
  if (target.gt(stock))
    return refuse("target-above-stock", (say) => say.mixing.refusals.cannotBeMade(show(target, say), show(stock, say)));
  return undefined;
}
