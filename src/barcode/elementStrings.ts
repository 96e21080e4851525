/**
 * Splits what a GS1 symbol carries into its elements: identifier, value, and after a value of variable length a
 * separator (GS, 0x1D) unless it is the last. The text is hostile: it comes from whatever was held up.
 */
import { type Identifier, identifierAt } from "./identifiers";

export const separator = "\u001d";
/** A symbol holds 2,335 letters at most (Data Matrix, ISO/IEC 16022); QR more, but no pack does. */
export const mostCharacters = 3_000;

export interface Element {
  readonly ai: string;
  readonly value: string;
  /** It ran to the end of the symbol, without a separator. */
  readonly isLast: boolean;
}

export type ElementTrouble =
  | "empty"
  | "too-long"
  | "unknown-identifier"
  /** The symbol ends within a value, or the value has a length or a character that its identifier does not allow. */
  | "bad-value"
  | "repeated-with-another-value";

export type Split =
  | { readonly ok: true; readonly elements: readonly Element[] }
  | { readonly ok: false; readonly code: ElementTrouble; readonly at: number };

/** CSET 82 of the General Specifications, figure 7.11-1: what lots and serial numbers are written in. */
const allowed = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/;

export function splitElements(data: string): Split {
  if (data.length > mostCharacters) return { ok: false, code: "too-long", at: mostCharacters };
  const elements: Element[] = [];
  let at = skipSeparators(data, 0);
  if (at === data.length) return { ok: false, code: "empty", at };
  while (at < data.length) {
    const identifier = identifierAt(data, at);
    if (!identifier) return { ok: false, code: "unknown-identifier", at };
    const from = at + identifier.ai.length;
    const to = endOf(data, from, identifier);
    const value = data.slice(from, to);
    if (!isAllowed(value, identifier)) return { ok: false, code: "bad-value", at };
    const before = elements.find(({ ai }) => ai === identifier.ai);
    if (before && before.value !== value) return { ok: false, code: "repeated-with-another-value", at };
    if (!before) elements.push({ ai: identifier.ai, value, isLast: to === data.length });
    // One is tolerated after a value of fixed length, too: some printers put it there.
    at = skipSeparators(data, to);
  }
  return { ok: true, elements };
}

function endOf(data: string, from: number, { isPredefined, most }: Identifier): number {
  if (isPredefined) return Math.min(data.length, from + most);
  const mark = data.indexOf(separator, from);
  return mark < 0 ? data.length : mark;
}

const isAllowed = (value: string, { least, most, isDigits }: Identifier): boolean =>
  value.length >= least && value.length <= most && (isDigits ? /^\d+$/ : allowed).test(value);

function skipSeparators(data: string, from: number): number {
  let at = from;
  while (data[at] === separator) at++;
  return at;
}
