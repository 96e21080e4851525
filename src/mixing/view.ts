/**
 * The mixing form as a function: the words typed in, the lines to show out. The screen, the voice and the command line
 * all ask here, so none of them can give another answer.
 */
import { answer, refuse, type Says } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { parseRatio, type Ratio, showRatio } from "../sums/ratio";
import { type Caution, cautionsFor, refuseCompanions } from "./cautions";
import { type BottleLabel, bottleLabel, showStrength } from "./label";
import { type Measured, measuredUp, stepFor } from "./measured";
import { type Mix, type MixRequest, mix } from "./mix";
import { readStrength, readVolume } from "./reading";
import type { MixAnswer } from "./refusals";
import { isAlcohol, isChlorine, isPowder, type Strength } from "./units";
import { keptUntil, type UseBy } from "./useBy";

export const stockKinds = ["liquid", "powder", "tablet", "alcohol"] as const;
export type StockKind = (typeof stockKinds)[number];

/** Exactly what the form's fields hold. */
export type MixForm = {
  readonly kind: StockKind;
  /** Strength of the stock; for tablets, grams of active chlorine in one tablet. */
  readonly stock: string;
  readonly target: string;
  readonly volume: string;
  /** Anything else someone means to put in; anything but water is refused. */
  readonly companions: readonly string[];
  readonly productName: string;
  readonly madeBy: string;
  readonly madeAtMs: number;
  /** Hours of use the label gives once diluted; empty for the 24 h default. */
  readonly labelHours: string;
  readonly zone: string;
};

export type MixView = {
  readonly mix: Mix;
  readonly measured: Measured;
  /** One line per thing to do, in order, amounts rounded to 4 decimals for showing. */
  readonly lines: readonly string[];
  /** The answer by voice: the amount to measure, made up to, and never mix. */
  readonly spoken: string;
  readonly cautions: readonly Caution[];
  readonly useBy: UseBy;
  readonly label: BottleLabel;
};

/** Reads the form and computes the mix; the first trouble is the answer, in words. */
export function mixView(form: MixForm, phrases: SumPhrases = sumsEn): MixAnswer<MixView> {
  const alone = refuseCompanions(form.companions);
  if (!alone.ok) return alone;
  const request = readRequest(form);
  if (!request.ok) return request;
  const hours = readHours(form.labelHours);
  if (!hours.ok) return hours;
  const mixed = mix(request.value);
  if (!mixed.ok) return mixed;
  const useBy = keptUntil(form.madeAtMs, hours.value);
  const measured = measuredUp(mixed.value, stepFor(mixed.value));
  const { productName, zone, madeBy } = form;
  return answer({
    mix: mixed.value,
    measured,
    lines: linesFor(mixed.value, measured, phrases.mixing.lines),
    spoken: spokenFor(mixed.value, measured, phrases.mixing.spoken),
    cautions: cautionsFor(mixed.value, phrases),
    useBy,
    label: bottleLabel({ productName, resulting: measured.resulting, useBy, zone, madeBy }, phrases),
  });
}

function readRequest(form: MixForm): MixAnswer<MixRequest> {
  const volume = readVolume(form.volume);
  if (!volume.ok) return volume;
  const target = readStrength(form.target, form.kind === "alcohol" ? "percentVolume" : "percent");
  if (!target.ok) return target;
  if (form.kind === "alcohol") {
    const stock = readStrength(form.stock, "percentVolume");
    if (!stock.ok) return stock;
    if (!isAlcohol(stock.value) || !isAlcohol(target.value)) return doNotMeet(() => "% v/v");
    return answer({ kind: "alcohol", stock: stock.value, target: target.value, volume: volume.value });
  }
  if (!isChlorine(target.value)) return doNotMeet((say) => say.mixing.refusals.chlorineUnits);
  return readChlorineStock(form, target.value, volume.value);
}

function readChlorineStock(
  form: MixForm,
  target: Extract<MixRequest, { kind: "liquid" }>["target"],
  volume: MixRequest["volume"],
): MixAnswer<MixRequest> {
  if (form.kind === "tablet") {
    const grams = parseRatio(form.stock.replace(/\s*g$/i, ""));
    if (!grams.ok) return grams;
    return answer({ kind: "tablet", gramsPerTablet: grams.value, target, volume });
  }
  const stock: MixAnswer<Strength> = readStrength(form.stock, form.kind === "powder" ? "percentMass" : "percent");
  if (!stock.ok) return stock;
  if (form.kind === "powder")
    return isPowder(stock.value)
      ? answer({ kind: "powder", stock: stock.value, target, volume })
      : doNotMeet(() => "% w/w");
  return isChlorine(stock.value)
    ? answer({ kind: "liquid", stock: stock.value, target, volume })
    : doNotMeet((say) => say.mixing.refusals.chlorineUnits);
}

function doNotMeet(wanted: Says) {
  return refuse("units-do-not-meet", (say) => say.mixing.refusals.doNotMeet(wanted(say)));
}

/** A mix kept longer than a year is a slip of the pen. */
function readHours(text: string): MixAnswer<number | undefined> {
  if (text.trim() === "") return answer(undefined);
  const hours = parseRatio(text);
  if (!hours.ok) return hours;
  if (hours.value.lte(0)) return refuse("not-positive", (say) => say.mixing.refusals.hoursNothing);
  if (hours.value.gt(8784)) return refuse("too-much", (say) => say.mixing.refusals.hoursTooMany);
  return answer(hours.value.valueOf());
}

function linesFor(mixed: Mix, measured: Measured, say: SumPhrases["mixing"]["lines"]): readonly string[] {
  const made = say.measured(showRatio(measured.stock), showStrength(measured.resulting));
  switch (mixed.kind) {
    case "liquid": {
      const { addedTo, madeUpTo } = mixed;
      return [
        say.parts(showRatio(mixed.partsWater)),
        addedTo ? say.addedTo(ml(addedTo.waterMl), ml(addedTo.stockMl), ml(addedTo.totalMl)) : say.noWater,
        say.madeUpTo(ml(madeUpTo.totalMl), ml(madeUpTo.stockMl), ml(madeUpTo.waterMl)),
        say.madeUp(made),
      ];
    }
    case "powder":
      return [say.powder(showRatio(mixed.grams), ml(mixed.totalMl)), made];
    case "tablet":
      return [
        say.tablets(String(mixed.tablets), ml(mixed.totalMl), showRatio(mixed.exactTablets)),
        say.makes(showStrength(mixed.resulting)),
      ];
    case "alcohol":
      return [say.alcohol(ml(mixed.stockMl), ml(mixed.totalMl)), say.madeUp(made)];
  }
}

function spokenFor(mixed: Mix, measured: Measured, say: SumPhrases["mixing"]["spoken"]): string {
  const totalMl = mixed.kind === "liquid" ? mixed.madeUpTo.totalMl : mixed.totalMl;
  return `${say[mixed.kind](showRatio(measured.stock), showRatio(totalMl))} ${say.never}`;
}

function ml(amount: Ratio): string {
  return `${showRatio(amount)} mL`;
}
