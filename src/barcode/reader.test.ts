/** Codes drawn by an independent writer, spoilt as a hand and a lamp spoil them, read and understood. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, describe, expect, test } from "vitest";
import { asRgba, type CodeKind, codePicture, type Spoilt } from "../../tests/support/codePictures";
import { readPackCode } from "./packCode";
import { openReader } from "./reader";

let read: Awaited<ReturnType<typeof openReader>>;
beforeAll(async () => {
  const file = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
  read = await openReader({ bytes: file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength) });
});

const written = "(01)09521234543213(17)280131(10)N-204";
const kinds: readonly (readonly [CodeKind, string, string])[] = [
  ["gs1datamatrix", written, "]d2"],
  ["gs1-128", written, "]C1"],
  ["gs1qrcode", written, "]Q3"],
  ["ean13", "9521234543213", "]E0"],
  ["qrcode", "https://example.com/01/09521234543213/10/N-204?17=280131", "]Q1"],
];
const ways: readonly (readonly [string, Spoilt])[] = [
  ["held straight", {}],
  ["turned by 12 degrees", { turnDeg: 12 }],
  ["upside down", { turnDeg: 180 }],
  ["out of focus", { blur: 0.3 }],
  ["in light from one side", { shade: 0.7 }],
  ["grainy", { grain: 15 }],
  ["turned, out of focus, in uneven light and grainy", { turnDeg: -8, blur: 0.2, shade: 0.6, grain: 8 }],
];

describe.each(kinds)("%s", (kind, text, symbology) => {
  test.each(ways)("is read %s", async (_, spoilt) => {
    const seen = await read(asRgba(codePicture(kind, text, spoilt)));
    expect(seen[0]?.symbology).toBe(symbology);
    const found = readPackCode(seen[0] ?? { symbology: "", text: "" }, 2026);
    const lot = kind === "ean13" ? { lot: null, expiry: null } : { lot: "N-204", expiry: "2028-01-31" };
    expect(found).toMatchObject({ ok: true, pack: { gtin: "09521234543213", ...lot } });
  });
});

test("the separator comes through a picture as it is: lot, separator, expiry", async () => {
  const seen = await read(asRgba(codePicture("gs1datamatrix", "(01)09521234543213(10)ABC123(17)251231")));
  expect(seen).toEqual([{ symbology: "]d2", text: "010952123454321310ABC123\u001d17251231" }]);
});

test("a code printed without its separator is read, and warned of", async () => {
  const seen = await read(asRgba(codePicture("datamatrix", "^FNC1010952123454321310ABC12317251231")));
  const found = readPackCode(seen[0] ?? { symbology: "", text: "" }, 2026);
  expect(found).toMatchObject({ pack: { lot: "ABC12317251231", warnings: ["separator-may-be-missing"] } });
});

test("a picture with nothing in it reads as nothing", async () => {
  const empty = { width: 1280, height: 720, grey: new Uint8Array(1280 * 720).fill(170) };
  expect(await read(asRgba(empty))).toEqual([]);
});
