/**
 * Exact rational numbers for measured amounts, so that amount × strength is conserved to the last digit.
 * Text comes in as plain decimals and goes out rounded only at the very end, at a stated number of places.
 */
import Fraction from "fraction.js";
import { type Answer, answer, quoted, refuse } from "./answer";

export type Ratio = Fraction;

/** Builds a ratio from whole numbers. `ratio(1, 3)` is exactly one third. */
export function ratio(numerator: number | bigint, denominator: number | bigint = 1): Ratio {
  return new Fraction(BigInt(numerator), BigInt(denominator));
}

export const zero = ratio(0);

/**
 * Reads "0.5", "12" or "1/3": no sign, no exponent, at most 9 digits before and 9 after the point.
 * The bound keeps hostile input cheap and is far beyond any bottle.
 */
export function parseRatio(text: string): Answer<Ratio, "not-a-number"> {
  const trimmed = text.trim();
  if (/^\d{1,9}(\.\d{1,9})?$/.test(trimmed)) return answer(new Fraction(trimmed));
  if (/^\d{1,9}\/0*[1-9]\d{0,8}$/.test(trimmed)) return answer(new Fraction(trimmed));
  return refuse("not-a-number", (say) => say.notANumber(quoted(text)));
}

/** Rounds half up to `places` decimals and prints without trailing zeros: 100, 14.2857, 0.5. Only for showing. */
export function showRatio(value: Ratio, places = 4): string {
  const [whole = "0", decimals = ""] = fixed(value, places).split(".");
  const kept = decimals.replace(/0+$/, "");
  return kept === "" ? whole : `${whole}.${kept}`;
}

/** Rounds half up to exactly `places` decimals, as published tables print them: "20.4082". */
export function fixed(value: Ratio, places: number): string {
  const scale = 10n ** BigInt(places);
  const scaled = (2n * value.n * scale + value.d) / (2n * value.d);
  const digits = scaled.toString().padStart(places + 1, "0");
  const sign = value.s < 0n && scaled !== 0n ? "-" : "";
  if (places === 0) return `${sign}${digits}`;
  return `${sign}${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/** The smallest multiple of `step` that is not below `value`. */
export function roundUpTo(value: Ratio, step: Ratio): Ratio {
  return value.div(step).ceil().mul(step);
}

/** Exact text for storage: "1000/7" or "5". */
export function exactText(value: Ratio): string {
  return value.toFraction();
}
