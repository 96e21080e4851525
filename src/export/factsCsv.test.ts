import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { cell, factsCsv } from "./factsCsv";
import { stampOf } from "./samples/lived";

const entry = (n: number, lot: string) => ({
  n,
  fact: { type: "v1.LotGiven", witnessedMs: 0, cause: 3, item: "needle", lot, expiry: null } as const,
  ...stampOf({ by: "voice", confidence: 0.9 }, 500),
  prev: "ab".repeat(32),
});

/** A reader of RFC 4180 written apart from the writer, character by character. */
function readCsv(text: string): string[][] {
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

describe("RFC 4180 section 2", () => {
  test.each([
    ["plain", "plain"],
    ["a,b", '"a,b"'],
    ['say "done"', '"say ""done"""'],
    ["two\r\nlines", '"two\r\nlines"'],
  ])("writes %j as %j", (value, written) => {
    expect(cell(value)).toBe(written);
  });

  property.prop([fc.string({ unit: "grapheme" })])("gives every text back, but for a formula's apostrophe", (lot) => {
    const rows = readCsv(factsCsv({ entries: [entry(1, lot), entry(2, "next")] }));
    const particulars = rows[1]?.at(-1) ?? "";
    expect(rows.map((row) => row.length)).toEqual([11, 11, 11]);
    expect(JSON.parse(particulars)).toEqual({ item: "needle", lot, expiry: null });
  });
});

test.each(["=1+1", "+1", "-1", "@sum", "\t=1", "\r=1"])("makes the formula %j inert", (value) => {
  expect(readCsv(`${cell(value)}\r\n`)).toEqual([[`'${value}`]]);
});

test("leaves a negative number a number", () => {
  expect(cell(-5)).toBe("-5");
});
