/** The cycle form as text fields and the verdict it comes to. Pure; nothing is judged until there is something to judge. */

import { defaultLethality, type LethalityMethod } from "../../../steriliser/lethality";
import type { CycleClass, LoadKind } from "../../../steriliser/load";
import { standardAtmosphereKPa } from "../../../steriliser/reading";
import { type CycleView, cycleView, handView } from "../../../steriliser/view";
import { type Answer, answer, refuse } from "../../../sums/answer";
import type { SumPhrases } from "../../../sums/phrases";
import { sumsEn } from "../../../sums/phrases/en";

export interface CycleDraft {
  readonly how: "file" | "hand";
  readonly csv: string;
  readonly coolest: string;
  readonly hottest: string;
  readonly minutes: string;
  readonly kPaAbs: string;
  readonly bandId: string;
  readonly cycleClass: CycleClass;
  readonly load: readonly LoadKind[];
  readonly stated: readonly LoadKind[];
  readonly atmosphereKPa: string;
  readonly gapSec: string;
  readonly method: LethalityMethod;
  readonly referenceC: string;
  readonly zK: string;
}

export const emptyCycle: CycleDraft = {
  ...{ how: "file", csv: "", coolest: "", hottest: "", minutes: "", kPaAbs: "" },
  ...{ bandId: "en-134", cycleClass: "B", load: ["wrapped-solid"], stated: [] },
  ...{ atmosphereKPa: String(standardAtmosphereKPa), gapSec: "60", method: defaultLethality.method },
  ...{ referenceC: String(defaultLethality.referenceC), zK: String(defaultLethality.zK) },
};

/** Limits as at the command line, so that both read the same. */
const limits = {
  coolest: [-20, 200],
  hottest: [-20, 200],
  minutes: [0, 1440],
  kPaAbs: [0, 1000],
  atmosphereKPa: [50, 110],
  gapSec: [0.001, 3600],
  referenceC: [50, 200],
  zK: [1, 100],
} as const;
type NumberField = keyof typeof limits;

/** @param name how the form calls a field, for a refusal in its own words. @returns null while it is not filled in. */
export function cycleFrom(
  draft: CycleDraft,
  name: (field: NumberField) => string,
  sums: SumPhrases = sumsEn,
): Answer<CycleView, string> | null {
  const isEmpty =
    draft.how === "file"
      ? draft.csv.trim() === ""
      : [draft.coolest, draft.hottest, draft.minutes].some((text) => text.trim() === "");
  if (isEmpty) return null;
  const read = (field: NumberField) => readNumber(draft[field], limits[field], name(field));
  const [gap, referenceC, zK, atmosphere] = [read("gapSec"), read("referenceC"), read("zK"), read("atmosphereKPa")];
  if (!gap.ok) return gap;
  if (!referenceC.ok) return referenceC;
  if (!zK.ok) return zK;
  if (!atmosphere.ok) return atmosphere;
  const { bandId, cycleClass, load, stated: statedByMaker } = draft;
  const lethality = { method: draft.method, referenceC: referenceC.value, zK: zK.value };
  const common = { bandId, cycleClass, load, statedByMaker, choice: { mostGapMs: gap.value * 1000, lethality } };
  if (draft.how === "file") return cycleView({ ...common, csv: draft.csv, atmosphereKPa: atmosphere.value }, sums);
  const [coolest, hottest, minutes] = [read("coolest"), read("hottest"), read("minutes")];
  if (!coolest.ok) return coolest;
  if (!hottest.ok) return hottest;
  if (!minutes.ok) return minutes;
  const kPa = draft.kPaAbs.trim() === "" ? answer(null) : read("kPaAbs");
  if (!kPa.ok) return kPa;
  if (coolest.value > hottest.value) return refuse("mixed-up", (say) => say.steriliser.mixedUp);
  const entry = { coolestC: coolest.value, hottestC: hottest.value, heldMs: minutes.value * 60_000, kPaAbs: kPa.value };
  return handView({ ...common, entry }, sums);
}

/** "134,5" and "134.5" are the same; nothing here has thousands. */
function readNumber(
  text: string,
  [low, high]: readonly [number, number],
  name: string,
): Answer<number, "not-a-number"> {
  const plain = text.trim().replace(",", ".");
  const value = /^-?\d{1,6}(\.\d{1,6})?$/.test(plain) ? Number(plain) : Number.NaN;
  return value >= low && value <= high
    ? answer(value)
    : refuse("not-a-number", (say) => say.steriliser.numberNeeded(name, low, high));
}
