/** Facts of one event made into signed entries, ready to be kept as one. Shared by every journal. */
import { SessionFact } from "../session/fact";
import type { Digest } from "./canonical";
import { headOf, signedMessage } from "./chain";
import { type LogEntry, Stamp } from "./entry";
import type { Signature } from "./header";
import type { JournalTrouble, Signer } from "./journal";

export type Batch = {
  entries: readonly LogEntry[];
  /** One for each entry, over the head after it. */
  signatures: readonly Signature[];
  head: Digest;
};

export const trouble = (code: JournalTrouble["code"], message: string): JournalTrouble => ({
  ok: false,
  code,
  message,
});

/**
 * @param after Where the chain stands: entries kept so far, and their head.
 * @returns the batch, or why it cannot be: a shape that is not ours, or a key that does not sign.
 */
export async function makeBatch(
  after: { count: number; head: Digest },
  facts: readonly SessionFact[],
  stamp: Stamp,
  signer: Signer,
): Promise<({ ok: true } & Batch) | JournalTrouble> {
  const stamped = Stamp.safeParse(stamp);
  if (!stamped.success) return trouble("not-a-fact", `Stamp: ${stamped.error.issues[0]?.message ?? "wrong shape"}`);
  const entries: LogEntry[] = [];
  const heads: Digest[] = [];
  let head = after.head;
  for (const [i, fact] of facts.entries()) {
    const read = SessionFact.safeParse(fact);
    if (!read.success) return trouble("not-a-fact", `Fact ${i}: ${read.error.issues[0]?.message ?? "wrong shape"}`);
    const entry: LogEntry = { n: after.count + i + 1, fact: read.data, ...stamped.data, prev: head };
    try {
      head = headOf(head, entry);
    } catch (error) {
      return trouble("not-a-fact", `Fact ${i}: ${String(error)}`);
    }
    entries.push(entry);
    heads.push(head);
  }
  const signatures = await signAll(heads, signer);
  if (signatures === null) return trouble("key-lost", "The key of this device does not sign.");
  return { ok: true, entries, signatures, head };
}

/** @returns null where the key fails. */
export async function signAll(heads: readonly Digest[], signer: Signer): Promise<Signature[] | null> {
  try {
    return await Promise.all(heads.map((head) => signer.sign(signedMessage("head", head))));
  } catch {
    return null;
  }
}
