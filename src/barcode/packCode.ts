/**
 * What a code held up to the camera says of a pack: product number, lot, expiry. Read by the rules of GS1 and nothing
 * guessed: what is not sure is a trouble or a warning, and the warning is shown or said.
 */
import { hasRightCheckDigit } from "./checkDigit";
import { type Element, splitElements } from "./elementStrings";
import { readGs1Date } from "./gs1Date";
import { uriElements } from "./linkUri";

/** What a reader saw: the ISO/IEC 15424 identifier of the symbology, and the text behind it. */
export interface Seen {
  /** "]d2", "]C1", "]E0", "]Q3", "]Q1" ... */
  readonly symbology: string;
  readonly text: string;
}

export type CodeWarning =
  /** A lot without a separator runs to the end and holds what looks like a date: it may have swallowed the expiry. */
  | "separator-may-be-missing"
  /** The expiry names a month; its last day is taken. */
  | "month-only";

export interface Pack {
  /** Fourteen digits. */
  readonly gtin: string;
  readonly lot: string | null;
  /** Usable through the end of this day (common reading of "use by"). */
  readonly expiry: string | null;
  readonly produced: string | null;
  readonly serial: string | null;
  readonly warnings: readonly CodeWarning[];
}

export type CodeTrouble =
  /** Neither GS1 elements, nor a product number. */
  | "not-a-pack"
  | "malformed"
  | "bad-check-digit"
  | "bad-date"
  /** A lot counts only with the number of its product (General Specifications, 3.4.1). */
  | "no-product-number";

export type ReadCode =
  | { readonly ok: true; readonly pack: Pack }
  | { readonly ok: false; readonly code: CodeTrouble; readonly why: string };

const refuse = (code: CodeTrouble, why: string): ReadCode => ({ ok: false, code, why });

/** Symbologies that carry GS1 elements; the others carry them only if they say so. */
const carriesElements: ReadonlySet<string> = new Set(["]d2", "]C1", "]e0", "]e1", "]e2", "]Q3", "]J1"]);

/** @param currentYear four digits; decides the century. */
export function readPackCode({ symbology, text }: Seen, currentYear: number): ReadCode {
  if (carriesElements.has(symbology)) return fromElements(text, currentYear);
  if (/^\]E[0-4]$/.test(symbology)) return fromProductNumber(text);
  const linked = uriElements(text);
  if (linked) return packOf(linked, currentYear);
  return refuse("not-a-pack", "It carries no product number.");
}

function fromElements(text: string, currentYear: number): ReadCode {
  const split = splitElements(text);
  if (!split.ok) return refuse("malformed", `${split.code} at character ${split.at + 1}`);
  return packOf(split.elements, currentYear);
}

/** EAN-13, EAN-8, UPC-A: the product and nothing else. */
function fromProductNumber(text: string): ReadCode {
  if (!/^(\d{8}|\d{12,14})$/.test(text)) return refuse("malformed", "A product number has 8, 12, 13 or 14 digits.");
  if (!hasRightCheckDigit(text)) return refuse("bad-check-digit", "The last digit does not fit the others.");
  return { ok: true, pack: { ...nothing, gtin: text.padStart(14, "0") } };
}

const nothing: Omit<Pack, "gtin"> = { lot: null, expiry: null, produced: null, serial: null, warnings: [] };

function packOf(elements: readonly Element[], currentYear: number): ReadCode {
  const valueAt = (ai: string) => elements.find((element) => element.ai === ai)?.value ?? null;
  const gtin = valueAt("01") ?? valueAt("02");
  if (gtin === null) return refuse("no-product-number", "A lot or date without its product number says nothing.");
  if (!hasRightCheckDigit(gtin)) return refuse("bad-check-digit", "The product number's last digit does not fit.");
  const expires = valueAt("17");
  const made = valueAt("11");
  const expiry = expires === null ? null : readGs1Date(expires, currentYear);
  if (expiry?.ok === false) return refuse("bad-date", "The expiry is no day of the calendar.");
  const produced = made === null ? null : readGs1Date(made, currentYear);
  if (produced?.ok === false) return refuse("bad-date", "The day of making is no day of the calendar.");
  const warnings: CodeWarning[] = [];
  if (elements.some((element) => mayHaveSwallowed(element, currentYear))) warnings.push("separator-may-be-missing");
  if (expiry?.isMonthOnly) warnings.push("month-only");
  return {
    ok: true,
    pack: {
      gtin,
      lot: valueAt("10"),
      expiry: expiry?.day ?? null,
      // Day 00 of a making means "not stated" (General Specifications, 3.4.2).
      produced: produced && !produced.isMonthOnly ? produced.day : null,
      serial: valueAt("21"),
      warnings,
    },
  };
}

const variable: ReadonlySet<string> = new Set(["10", "21", "22", "240", "241"]);

/** The trap: "10ABC123" then "17251231" without the separator between reads as one lot, ABC12317251231. */
function mayHaveSwallowed({ ai, value, isLast }: Element, currentYear: number): boolean {
  if (!variable.has(ai) || !isLast) return false;
  for (let at = 1; at + 8 <= value.length; at++) {
    const next = value.slice(at, at + 2);
    if ((next === "17" || next === "11") && readGs1Date(value.slice(at + 2, at + 8), currentYear).ok) return true;
  }
  return false;
}
