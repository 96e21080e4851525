/** Tables by RFC 4180: CRLF behind every row, quotes doubled; a cell that a spreadsheet would take for a formula is inert. */

/** @returns text in UTF-8 without a byte order mark. */
export const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");

/** What opens a formula in common spreadsheets, full-width signs and what is skipped before one among them (common practice). */
const opensFormula = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/;

/** One cell by RFC 4180 section 2, rules 5 to 7. */
export function cell(value: string | number): string {
  if (typeof value === "number") return String(value);
  const inert = opensFormula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
