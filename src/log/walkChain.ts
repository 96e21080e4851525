/**
 * Walks a chain of entries and says where it first breaks. Which of two neighbours was altered is told by the signed
 * head between them: an altered entry no longer comes to its signed head; an altered link no longer names it.
 */
import { canonicalText, type Digest } from "./canonical";
import { headOfHeader, headOfText } from "./chain";
import type { LogEntry } from "./entry";
import type { Header } from "./header";

export type ChainBreak =
  /** Entry `at` does not carry its own number: one is missing, doubled or out of order from here. */
  | { code: "wrong-number"; at: number; expected: number; found: number }
  /** Entry `at` names another head than the one before it comes to: it, or entry `at - 1`, was altered. */
  | { code: "broken-link"; at: number; expected: Digest; found: Digest };

export type WalkedChain = {
  /** `heads[0]` of the header, `heads[n]` after entry n; as far as the walk came. */
  heads: Digest[];
  /** The entries as RFC 8785 writes them. */
  texts: string[];
  broken: ChainBreak | null;
};

/** @param walked how far this header and the first of these entries have been walked already. */
export function walkChain(
  header: Header,
  entries: readonly LogEntry[],
  walked: Pick<WalkedChain, "heads" | "texts"> = { heads: [headOfHeader(header)], texts: [] },
): WalkedChain {
  const heads = [...walked.heads];
  const texts = [...walked.texts];
  let head = heads.at(-1) ?? headOfHeader(header);
  for (let n = texts.length + 1; n <= entries.length; n++) {
    const entry = entries[n - 1] as LogEntry;
    if (entry.n !== n) {
      return { heads, texts, broken: { code: "wrong-number", at: n, expected: n, found: entry.n } };
    }
    if (entry.prev !== head) {
      return { heads, texts, broken: { code: "broken-link", at: n, expected: head, found: entry.prev } };
    }
    const text = canonicalText(entry);
    head = headOfText(head, text);
    heads.push(head);
    texts.push(text);
  }
  return { heads, texts, broken: null };
}
