/** What comes back from a store is checked before it is believed: its shape, its chain and the last head's signature. */
import { z } from "zod";
import { trouble } from "./batch";
import { signedMessage } from "./chain";
import { LogEntry } from "./entry";
import { Header, Signature } from "./header";
import type { JournalTrouble, KeptSession } from "./journal";
import { firstStranger, PersonalPart } from "./personal";
import { Closing } from "./seal";
import { isSignedBy } from "./signing";
import { walkChain } from "./walkChain";

const Kept = z.strictObject({
  header: Header,
  entries: z.array(LogEntry),
  signatures: z.array(Signature).min(1),
  head: z.string(),
  closing: Closing.nullable(),
  personal: z.array(PersonalPart),
});

/** @param stored Anything a store gave back. @returns the session, or `damaged` with the first place that is wrong. */
export async function verifyKept(stored: unknown): Promise<{ ok: true; kept: KeptSession } | JournalTrouble> {
  const read = Kept.safeParse(stored);
  if (!read.success) {
    const issue = read.error.issues[0];
    return trouble("damaged", `${issue?.path.join(".") ?? ""}: ${issue?.message ?? "wrong shape"}`);
  }
  const kept = read.data;
  const { heads, broken } = walkChain(kept.header, kept.entries);
  if (broken) return trouble("damaged", `Entry ${broken.at}: ${broken.code}.`);
  const last = heads.at(-1) ?? "";
  const signature = kept.signatures.at(-1) ?? "";
  if (kept.signatures.length !== heads.length || kept.head !== last) {
    return trouble("damaged", `The store names another last head than its ${kept.entries.length} entries come to.`);
  }
  const stranger = firstStranger(kept, kept.personal);
  if (stranger) return trouble("damaged", `What is kept beside entry ${stranger.n} is not what it commits to.`);
  const signed = await isSignedBy(kept.header.device, signedMessage("head", last), signature);
  return signed ? { ok: true, kept } : trouble("damaged", "The last head is not signed by this session's device.");
}
