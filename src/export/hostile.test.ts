/** Files from anywhere, given to the verifier as a file dropped on its page is: a clear refusal, never a throw, never a pass. */
import { fc, test as property } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { hostileInput, sealedRecord } from "../../tests/support/papers";
import { marker, packed } from "../bundle/container";
import { canonicalText } from "../log";
import { checkFile } from "./checkFile";
import { factsCsv } from "./factsCsv";
import { readCsv } from "./samples/readCsv";
import { surfacesCsv } from "./surfacesCsv";
import { passes } from "./verdict";

const utf8 = new TextEncoder();
const { record, text } = await sealedRecord(hostileInput());
const passed = async (file: string): Promise<boolean> => {
  const checked = await checkFile(utf8.encode(file), { trusted: [record.header.device] });
  return checked.ok && passes(checked.verdict);
};

test("the record that these begin from is whole, with HTML in every text of it", async () => {
  expect(await passed(text)).toBe(true);
  expect(text).toContain("<script>");
});

property.prop([fc.oneof(fc.json({ maxDepth: 8 }), fc.string({ unit: "binary" }))], { numRuns: 400 })(
  "fuzzed JSON and any text at all are refused",
  async (file) => {
    expect(await passed(file)).toBe(false);
    expect(await passed(`<!doctype html>${file}`)).toBe(false);
  },
);

/** Every place of a JSON value, as the names that lead there. */
function placesIn(value: unknown, at: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([name, inner]) => placesIn(inner, [...at, name]))];
}
const places = placesIn(record).filter((at) => at.length > 0);

property.prop([fc.constantFrom(...places), fc.jsonValue({ maxDepth: 3 })], { numRuns: 300 })(
  "a record with any JSON put in any one place of it is refused, or is the very same",
  async (at, value) => {
    const copy = structuredClone(record) as unknown as Record<string, unknown>;
    const inner = at.slice(0, -1).reduce<Record<string, unknown>>((here, name) => here[name] as never, copy);
    inner[at.at(-1) ?? ""] = value;
    let file: string;
    try {
      file = canonicalText(copy);
    } catch {
      file = JSON.stringify(copy);
    }
    expect(await passed(file)).toBe(file === text);
  },
);

test("200 MB are refused unread", async () => {
  expect(await checkFile(new Uint8Array(200_000_000), {})).toEqual({ ok: false, why: "tooLarge" });
});

test("a page whose record is a bomb of base64 is refused by its size", async () => {
  const page = packed(`<!doctype html>${marker}`, text) ?? "";
  const bomb = page.replace(/(id="gloveside-record">)/, `$1${"A".repeat(90_000_000)}`);
  expect(await checkFile(utf8.encode(bomb), {})).toMatchObject({ ok: false, why: "tooLarge" });
});

test("HTML stays text in a table, whole and in its own cell", () => {
  const [head = [], ...rows] = readCsv(surfacesCsv(record));
  expect(rows.map((row) => row.length)).toEqual(rows.map(() => head.length));
  expect(rows[0]?.join()).toContain("<img src=x onerror=");
  expect(readCsv(factsCsv(record)).every((row) => row.length === 11)).toBe(true);
});
