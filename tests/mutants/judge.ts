/** One mutant judged: caught by a breach that happens on the real chart, left open, shown equivalent, or missed. */
import { checkProtocol } from "../../src/check/checkProtocol";
import type { RuleId } from "../../src/check/rules";
import { whyOf } from "../../src/check/story";
import { checkEn } from "../../src/check/words/en";
import type { Protocol } from "../../src/session/protocol";
import { asProtocol } from "../../src/session/readProtocol";
import type { Mutant } from "./edit";
import { walkWhole } from "./wholeStation";

export const outcomes = ["caught", "notProved", "equivalent", "missed"] as const;
export interface Judged {
  readonly came: (typeof outcomes)[number];
  readonly rule: RuleId | null;
  readonly words: string;
}

export function judge({ what, protocol }: Mutant): Judged {
  const found = checkProtocol(asRead(protocol, what), { firstOnly: true });
  switch (found.verdict) {
    case "breach":
      return { came: "caught", rule: found.breaches[0]?.rule ?? null, words: "" };
    case "notProved":
      return { came: "notProved", rule: null, words: whyOf(checkEn, protocol, found.why) };
    case "proved": {
      const { isHarmless, words } = walkWhole(protocol);
      return { came: isHarmless ? "equivalent" : "missed", rule: null, words };
    }
  }
}

/** An operator that makes no protocol would be caught by the reader, and say nothing about the rules. */
export function asRead(protocol: Protocol, what: string): Protocol {
  const read = asProtocol(JSON.parse(JSON.stringify(protocol)));
  if (!read.ok) throw new Error(`${what} is no protocol: ${read.trouble.message}`);
  return read.protocol;
}
