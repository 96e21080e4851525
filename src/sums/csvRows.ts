/** Splits CSV text into rows of cells (RFC 4180 quoting), finding the delimiter from the first line. Blank lines go. */

export type Rows = { readonly rows: readonly (readonly string[])[]; readonly decimalComma: boolean };

/** @returns null where a quote is opened and never closed. With semicolons or tabs a comma may be the decimal sign. */
export function splitRows(text: string): Rows | null {
  const clean = text.startsWith("\uFEFF") ? text.slice(1) : text;
  const firstLine = clean.slice(0, clean.search(/[\r\n]|$/));
  const delimiter = firstLine.includes(";") ? ";" : firstLine.includes("\t") ? "\t" : ",";
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = "";
  let inQuotes = false;
  const endCell = () => {
    row.push(cell);
    cell = "";
  };
  const endRow = () => {
    endCell();
    if (row.some((c) => c.trim() !== "")) rows.push(row);
    row = [];
  };
  for (let i = 0; i < clean.length; i += 1) {
    const c = clean[i];
    if (inQuotes) {
      if (c !== '"') cell += c;
      else if (clean[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else inQuotes = false;
    } else if (c === '"' && cell === "") inQuotes = true;
    else if (c === delimiter) endCell();
    else if (c === "\n") endRow();
    else if (c !== "\r") cell += c;
    else if (clean[i + 1] !== "\n") endRow();
  }
  if (inQuotes) return null;
  endRow();
  return { rows, decimalComma: delimiter !== "," };
}
