/**
 * What goes on the bottle, printed and spoken: what it is, how strong, when made, by whom, until when.
 * Labelling with concentration (MSF) and with date and time made (IARC field atlas); the use-by is ours to enforce.
 */
import { showWall } from "../due/zone";
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

export function bottleLabel(facts: LabelFacts): BottleLabel {
  const made = showWall(facts.useBy.madeAtMs, facts.zone);
  const until = showWall(facts.useBy.useByMs, facts.zone);
  return {
    printed: [
      facts.productName,
      showStrength(facts.resulting),
      `Made ${made} by ${facts.madeBy}`,
      `Use before ${until} (${facts.useBy.rule === "label" ? "label" : "24 h"})`,
      "Never mix with acids, ammonia or other cleaners",
    ],
    spoken: `${facts.productName}, ${spokenStrength(facts.resulting)}. Use before ${until}. Never mix with anything else.`,
  };
}

function spokenStrength(s: Strength<"gramsPerLitre"> | Strength<"percentVolume">): string {
  if (s.unit === "percentVolume") return `${showRatio(s.amount, 1)} percent alcohol by volume`;
  return `${fixed(chlorineIn("ppm", s).amount, 0)} parts per million`;
}
