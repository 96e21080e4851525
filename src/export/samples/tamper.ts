/**
 * `npm run tamper [-- STRIDE]`: changes every byte of a record (or each STRIDE-th) to another, verifies, and prints how
 * many were tried, found and found where they are. Exits with 1 if any was missed.
 */
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { newSigner } from "../../log";
import { sealRecord } from "../sealRecord";
import { passes } from "../verdict";
import { verifyRecord } from "../verifyRecord";
import { isPointedOut, partsOf } from "./alterations";
import { live } from "./lived";
import { wholeSession } from "./wholeSession";

const stride = Number(process.argv[2] ?? 1);
const signer = await newSigner();
const { journal, writer } = await live(inputFor(smallProtocol), wholeSession, signer);
const sealed = await sealRecord(journal, writer, signer, "2026-11-25T11:00:00.000+00:00");
if (!sealed.ok) throw new Error(sealed.message);
const bytes = new TextEncoder().encode(sealed.text);
const partAt = partsOf(sealed.record);

let tried = 0;
let found = 0;
let placed = 0;
for (let at = 0; at < bytes.length; at += stride) {
  const copy = bytes.slice();
  // A digit to a digit and a letter to a letter, so that most changes still read as JSON.
  copy[at] = (copy[at] ?? 0) ^ 1;
  const verdict = await verifyRecord(copy);
  tried++;
  if (!passes(verdict)) found++;
  if (isPointedOut(verdict, partAt(at), at)) placed++;
  else console.log("not placed", at, partAt(at), JSON.stringify(verdict).slice(0, 300));
}
console.log(
  `${sealed.record.entries.length} facts, ${bytes.length} bytes: ${tried} tried, ${found} found, ${placed} placed`,
);
process.exitCode = found === tried && placed === tried ? 0 : 1;
