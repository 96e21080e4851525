import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { cell, csv } from "./csv";
import { factsCsv } from "./factsCsv";
import { stampOf } from "./samples/lived";
import { readCsv } from "./samples/readCsv";

const entry = (n: number, lot: string) => ({
  n,
  fact: { type: "v1.LotGiven", witnessedMs: 0, cause: 3, item: "needle", lot, expiry: null } as const,
  ...stampOf({ by: "voice", confidence: 0.9 }, 500),
  prev: "ab".repeat(32),
});

describe("RFC 4180 section 2", () => {
  test.each([
    ["plain", "plain"],
    ["a,b", '"a,b"'],
    ['say "done"', '"say ""done"""'],
    ["two\r\nlines", '"two\r\nlines"'],
  ])("writes %j as %j", (value, written) => {
    expect(cell(value)).toBe(written);
  });

  test("writes the values of the RFC's own examples, rules 1, 6 and 7, quoting only where it must", () => {
    const last = ["zzz", "yyy", "xxx"];
    expect(csv([["aaa", "bbb", "ccc"], last])).toBe("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n");
    expect(csv([["aaa", "b\r\nbb", "ccc"], last])).toBe('aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n');
    expect(csv([["aaa", 'b"bb', "ccc"]])).toBe('aaa,"b""bb",ccc\r\n');
    // As they stand there, every field quoted, a reader gets the same.
    expect(readCsv('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n')).toEqual([["aaa", "b\r\nbb", "ccc"], last]);
    expect(readCsv('"aaa","b""bb","ccc"\r\n')).toEqual([["aaa", 'b"bb', "ccc"]]);
  });

  property.prop([fc.string({ unit: "grapheme" })])("gives every text back, but for a formula's apostrophe", (lot) => {
    const rows = readCsv(factsCsv({ entries: [entry(1, lot), entry(2, "next")] }));
    const particulars = rows[1]?.at(-1) ?? "";
    expect(rows.map((row) => row.length)).toEqual([11, 11, 11]);
    expect(JSON.parse(particulars)).toEqual({ item: "needle", lot, expiry: null });
  });
});

test.each(["=1+1", "+1", "-1", "@sum", "\t=1", "\r=1", "\n=1", " =1", "＝1+1", "＠sum"])(
  "makes the formula %j inert",
  (value) => {
    expect(readCsv(`${cell(value)}\r\n`)).toEqual([[`'${value}`]]);
  },
);

test("leaves a negative number a number", () => {
  expect(cell(-5)).toBe("-5");
});
