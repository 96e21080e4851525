/** A reader of RFC 4180 written apart from the writer, character by character. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let value = "";
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const char = text[i] ?? "";
    if (quoted && char === '"' && text[i + 1] === '"') {
      value += '"';
      i++;
    } else if (char === '"') quoted = !quoted;
    else if (!quoted && (char === "," || (char === "\r" && text[i + 1] === "\n"))) {
      rows.at(-1)?.push(value);
      value = "";
      if (char === "\r") {
        rows.push([]);
        i++;
      }
    } else value += char;
  }
  return rows.slice(0, -1);
}
