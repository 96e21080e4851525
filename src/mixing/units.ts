/**
 * Strengths that carry their unit in the type: a percent cannot be added to a ppm, and alcohol by volume cannot meet
 * available chlorine, because the compiler refuses it. Changing unit is its own, exact, deliberate act.
 */
import { type Ratio, ratio } from "../sums/ratio";

/** Available chlorine in water. `percent` is grams per 100 mL. */
export type ChlorineUnit = "percent" | "ppm" | "gramsPerLitre" | "degreesChlorum";
/** Alcohol by volume. `proof` is US proof, twice the percentage by volume. */
export type AlcoholUnit = "percentVolume" | "proof";
/** Active chlorine in a powder, grams per 100 g. */
export type PowderUnit = "percentMass";
export type StrengthUnit = ChlorineUnit | AlcoholUnit | PowderUnit;

export type Strength<Unit extends StrengthUnit = StrengthUnit> = { readonly unit: Unit; readonly amount: Ratio };

/** Millilitres, exact. */
export type Volume = { readonly ml: Ratio };

export function strength<Unit extends StrengthUnit>(unit: Unit, amount: Ratio): Strength<Unit> {
  return { unit, amount };
}

/** Adds two strengths of one and the same unit. Two units in one sum is a mistake of ours: the compiler says so first. */
export function add<Unit extends StrengthUnit>(a: Strength<Unit>, b: Strength<NoInfer<Unit>>): Strength<Unit> {
  if (a.unit !== b.unit) throw new TypeError(`${a.unit} and ${b.unit} cannot be added`);
  return { unit: a.unit, amount: a.amount.add(b.amount) };
}

/**
 * Grams of available chlorine per litre for one of each unit.
 * 1 % = 10 g/L = 10 000 ppm and 1 ppm = 1 mg/L (WHO cholera guidance on chlorine solutions); 1 degree chlorum = about
 * 0.3 % (CDC/ICAN environmental cleaning best practices, App. E, note 2).
 */
const gramsPerLitre: Record<ChlorineUnit, Ratio> = {
  percent: ratio(10),
  ppm: ratio(1, 1000),
  gramsPerLitre: ratio(1),
  degreesChlorum: ratio(3),
};

export function toGramsPerLitre(s: Strength<ChlorineUnit>): Strength<"gramsPerLitre"> {
  if (!isChlorine(s)) throw new TypeError("only chlorine has grams of available chlorine per litre");
  return strength("gramsPerLitre", s.amount.mul(gramsPerLitre[s.unit]));
}

export function chlorineIn<Unit extends ChlorineUnit>(unit: Unit, s: Strength<ChlorineUnit>): Strength<Unit> {
  return strength(unit, toGramsPerLitre(s).amount.div(gramsPerLitre[unit]));
}

export function toPercentVolume(s: Strength<AlcoholUnit>): Strength<"percentVolume"> {
  return strength("percentVolume", s.unit === "proof" ? s.amount.div(2) : s.amount);
}

export function isChlorine(s: Strength): s is Strength<ChlorineUnit> {
  return s.unit in gramsPerLitre;
}

export function isAlcohol(s: Strength): s is Strength<AlcoholUnit> {
  return s.unit === "percentVolume" || s.unit === "proof";
}

export function isPowder(s: Strength): s is Strength<PowderUnit> {
  return s.unit === "percentMass";
}
