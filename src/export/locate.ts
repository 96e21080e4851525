/**
 * Where a text stops being JSON, and in which entry of a record that is. Runs only on texts that JSON.parse refused, so
 * that a damaged record is told by the fact it was damaged in. Hostile input: no recursion, one pass.
 */

export type Trouble = {
  /** Offset of the first character that cannot stand there. */ at: number;
  entry: number | null;
};

const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const literals = ["true", "false", "null"];

type Open = { kind: "{" | "["; name: string; items: number };
/** What may stand next; `first` where the object or list may also be empty. */
type Next = "value" | "firstValue" | "name" | "firstName" | "colon" | "afterValue";
type Reading = { text: string; at: number; next: Next; name: string; stack: Open[] };

export function locate(text: string): Trouble {
  const reading: Reading = { text, at: 0, next: "value", name: "", stack: [] };
  while (reading.at < text.length) {
    const taken = take(reading);
    if (taken === 0) break;
    reading.at += taken;
  }
  const list = reading.stack[1];
  const entry = list?.kind === "[" && list.name === "entries" ? list.items + 1 : null;
  return { at: reading.at, entry };
}

/** Takes one token. @returns its length, or 0 where nothing that stands here can. */
function take(reading: Reading): number {
  const { text, at, next, stack } = reading;
  const char = text.charAt(at);
  if (" \t\n\r".includes(char)) return 1;
  const top = stack.at(-1);
  switch (char) {
    case ",":
      if (next !== "afterValue" || !top) return 0;
      top.items++;
      reading.next = top.kind === "{" ? "name" : "value";
      return 1;
    case ":":
      if (next !== "colon") return 0;
      reading.next = "value";
      return 1;
    case "}":
    case "]":
      if (top?.kind !== (char === "}" ? "{" : "[")) return 0;
      if (next !== "afterValue" && next !== (char === "}" ? "firstName" : "firstValue")) return 0;
      stack.pop();
      reading.next = "afterValue";
      return 1;
    default:
      return next === "name" || next === "firstName" ? takeName(reading) : takeValue(reading);
  }
}

function takeName(reading: Reading): number {
  const length = takeString(reading);
  reading.name = reading.text.slice(reading.at + 1, reading.at + length - 1);
  reading.next = "colon";
  return length;
}

function takeValue(reading: Reading): number {
  const { text, at, next, name, stack } = reading;
  if (next !== "value" && next !== "firstValue") return 0;
  const char = text.charAt(at);
  if (char === "{" || char === "[") {
    stack.push({ kind: char, name, items: 0 });
    reading.next = char === "{" ? "firstName" : "firstValue";
    return 1;
  }
  reading.next = "afterValue";
  if (char === '"') return takeString(reading);
  const literal = literals.find((word) => word.startsWith(char));
  return literal ? takeLiteral(reading, literal) : matchAt(number, text, at);
}

function takeLiteral(reading: Reading, word: string): number {
  let length = 0;
  while (length < word.length && reading.text.charAt(reading.at + length) === word.charAt(length)) length++;
  if (length === word.length) return length;
  reading.at += length;
  return 0;
}

/** A string, quotes included. Where it breaks off, `at` is left on the character that breaks it. */
function takeString(reading: Reading): number {
  const { text, at: from } = reading;
  if (text.charAt(from) !== '"') return 0;
  let at = from + 1;
  while (at < text.length) {
    const char = text.charAt(at);
    if (char === '"') return at + 1 - from;
    const length = char === "\\" ? matchAt(escaped, text, at) : Number(char >= " ");
    if (length === 0) break;
    at += length;
  }
  reading.at = at;
  return 0;
}

function matchAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}
