/**
 * What goes on the bottle, printed and spoken: what it is, how strong, when made, by whom, until when.
 * Labelling with concentration (MSF) and with date and time made (IARC field atlas); the use-by is ours to enforce.
 */
import { showWall } from "../due/zone";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { fixed, showRatio } from "../sums/ratio";
import { chlorineIn, type Strength } from "./units";
import type { UseBy } from "./useBy";

export type BottleLabel = { readonly printed: readonly string[]; readonly spoken: string };

export type LabelFacts = {
  readonly productName: string;
  readonly resulting: Strength<"gramsPerLitre"> | Strength<"percentVolume">;
  readonly useBy: UseBy;
  /** IANA zone of the studio, so that the label reads like the clock on the wall. */
  readonly zone: string;
  readonly madeBy: string;
};

/** "1000 ppm (0.1 %)" or "70 % v/v". Rounded half up to whole ppm or a tenth of a percent. */
export function showStrength(s: Strength<"gramsPerLitre"> | Strength<"percentVolume">): string {
  if (s.unit === "percentVolume") return `${showRatio(s.amount, 1)} % v/v`;
  return `${fixed(chlorineIn("ppm", s).amount, 0)} ppm (${showRatio(chlorineIn("percent", s).amount, 4)} %)`;
}

export function bottleLabel(facts: LabelFacts, phrases: SumPhrases = sumsEn): BottleLabel {
  const say = phrases.mixing.label;
  const made = showWall(facts.useBy.madeAtMs, facts.zone);
  const until = showWall(facts.useBy.useByMs, facts.zone);
  return {
    printed: [
      facts.productName,
      showStrength(facts.resulting),
      say.made(made, facts.madeBy),
      say.goodUntil(until, say.rules[facts.useBy.rule]),
      say.never,
    ],
    spoken: say.spoken(facts.productName, spokenStrength(facts.resulting, say), until),
  };
}

function spokenStrength(s: LabelFacts["resulting"], say: SumPhrases["mixing"]["label"]): string {
  if (s.unit === "percentVolume") return say.alcohol(showRatio(s.amount, 1));
  return say.ppm(fixed(chlorineIn("ppm", s).amount, 0));
}
