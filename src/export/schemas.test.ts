import { readFile } from "node:fs/promises";
import { fc, test as property } from "@fast-check/vitest";
import { Ajv2020 } from "ajv/dist/2020";
import { expect, test } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { makeClosing, newSigner } from "../log";
import { Protocol } from "../session/protocol";
import { RecordFile, recordOf } from "./recordFile";
import { anyEvent } from "./samples/anyEvents";
import { live } from "./samples/lived";
import { wholeSession } from "./samples/wholeSession";
import { protocolSchema, publishedSchemas, recordSchema } from "./schemas";
import { summarise } from "./summarise";

// An independent reader: ajv's JSON Schema 2020-12 build. Formats are left out; the patterns say the same.
const ajv = new Ajv2020({ strict: true, validateFormats: false });
const readsRecord = ajv.compile(recordSchema());
const readsProtocol = ajv.compile(protocolSchema());

const input = inputFor(smallProtocol);
const signer = await newSigner();
const recordFrom = async (events: Parameters<typeof live>[1]) => {
  const { kept } = await live(input, events, signer);
  const closing = await makeClosing(kept, summarise(input, kept.entries), "2026-11-25T11:00:00.000+00:00", signer);
  return recordOf({ ...kept, closing });
};
const whole = await recordFrom(wholeSession);

test.each(Object.entries(publishedSchemas()))("public/%s is the one the code writes today", async (name, text) => {
  expect(await readFile(new URL(`../../public/${name}`, import.meta.url), "utf8")).toBe(text);
});

property.prop([fc.array(anyEvent, { maxLength: 60, size: "max" })], { numRuns: 25 })(
  "takes every record that a session can come to",
  async (events) => {
    const record = JSON.parse(JSON.stringify(await recordFrom(events)));
    expect(readsRecord(record), JSON.stringify(readsRecord.errors?.[0])).toBe(true);
    expect(RecordFile.safeParse(record).success).toBe(true);
  },
);

/** Every place in a value, as a path of names. */
const placesIn = (value: unknown, path: readonly string[] = []): string[][] =>
  typeof value !== "object" || value === null
    ? [[...path]]
    : [[...path], ...Object.entries(value).flatMap(([name, inside]) => placesIn(inside, [...path, name]))];
const places = placesIn(whole).slice(1);

const strange = fc.constantFrom<unknown>(null, -1, 1.5, "", "x", "2026-13-45", true, [], {}, 1e300, "a".repeat(300));

function changed(path: readonly string[], change: (holder: Record<string, unknown>, name: string) => void): unknown {
  const copy = structuredClone(whole);
  let holder = copy as unknown as Record<string, unknown>;
  for (const name of path.slice(0, -1)) holder = holder[name] as Record<string, unknown>;
  change(holder, path.at(-1) ?? "");
  return copy;
}

property.prop([fc.constantFrom(...places), strange], { numRuns: 150 })(
  "agrees with Zod on a record with one value replaced",
  (path, value) => {
    const record = changed(path, (holder, name) => {
      holder[name] = value;
    });
    expect(readsRecord(record)).toBe(RecordFile.safeParse(record).success);
  },
);

property.prop([fc.constantFrom(...places)], { numRuns: 100 })(
  "agrees with Zod on a record with one thing left out or one too many",
  (path) => {
    const without = changed(path, (holder, name) => {
      if (Array.isArray(holder)) holder.splice(Number(name), 1);
      else delete holder[name];
    });
    const more = changed(path, (holder) => {
      if (Array.isArray(holder)) holder.push("stranger");
      else holder.stranger = 1;
    });
    expect(readsRecord(without)).toBe(RecordFile.safeParse(without).success);
    expect(readsRecord(more)).toBe(RecordFile.safeParse(more).success);
  },
);

test("agrees with Zod on the small protocol, and on one with a verb nobody knows", () => {
  const odd = structuredClone(smallProtocol) as unknown as { setUp: { effects: { verb: string }[] }[] };
  Object.assign(odd.setUp[0]?.effects[0] ?? {}, { verb: "polish" });
  expect([readsProtocol(smallProtocol), Protocol.safeParse(smallProtocol).success]).toEqual([true, true]);
  expect([readsProtocol(odd), Protocol.safeParse(odd).success]).toEqual([false, false]);
});
