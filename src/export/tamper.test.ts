/** Single bytes changed anywhere in a record: each is found, and where. `npm run tamper` tries them all. */
import { fc, test as property } from "@fast-check/vitest";
import { expect } from "vitest";
import { inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { attachmentOf, newSigner } from "../log";
import { isPointedOut, partsOf } from "./samples/alterations";
import { live, noteEvent, toneWav } from "./samples/lived";
import { wholeSession } from "./samples/wholeSession";
import { sealRecord } from "./sealRecord";
import { verifyRecord } from "./verifyRecord";

const signer = await newSigner();
const note = attachmentOf(toneWav);
const told = wholeSession.toSpliced(9, 0, noteEvent(note));
const { journal, writer } = await live(inputFor(smallProtocol), told, signer, [note]);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const bytes = new TextEncoder().encode(sealed.text);
const partAt = partsOf(sealed.record);

const offset = fc.nat({ max: bytes.length - 1 });
const altered = (change: (copy: number[]) => void): Uint8Array => {
  const copy = [...bytes];
  change(copy);
  return new Uint8Array(copy);
};

property.prop([offset, fc.integer({ min: 1, max: 255 })], { numRuns: 200 })(
  "a byte changed is found, and where",
  async (at, flip) => {
    const verdict = await verifyRecord(altered((copy) => copy.splice(at, 1, (copy[at] ?? 0) ^ flip)));
    expect(isPointedOut(verdict, partAt(at), at), JSON.stringify({ at, part: partAt(at), verdict })).toBe(true);
  },
);

property.prop([offset], { numRuns: 80 })("a byte left out is found, and where", async (at) => {
  const verdict = await verifyRecord(altered((copy) => copy.splice(at, 1)));
  expect(isPointedOut(verdict, partAt(at), at), JSON.stringify({ at, part: partAt(at), verdict })).toBe(true);
});

property.prop([offset, fc.integer({ min: 0, max: 255 })], { numRuns: 80 })(
  "a byte put in is found",
  async (at, byte) => {
    const verdict = await verifyRecord(altered((copy) => copy.splice(at, 0, byte)));
    expect([verdict.intact.ok, verdict.signedBy.ok]).not.toEqual([true, true]);
  },
);

property.prop([fc.integer({ min: 1, max: bytes.length - 1 })], { numRuns: 60 })(
  "a file cut short is found, and where it ends",
  async (length) => {
    const { intact } = await verifyRecord(bytes.slice(0, length));
    const part = partAt(length);
    expect(intact).toMatchObject({ ok: false, code: "not-json" });
    expect(!intact.ok && (intact.at.part === part.part || intact.at.part === "file")).toBe(true);
  },
);
