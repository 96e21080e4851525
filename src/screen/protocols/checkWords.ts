/** The standing of the check in one sentence. Pure. */
import type { Why } from "../../check/why";
import type { Findings } from "../../drafting/findings";
import type { CheckNow } from "./editing";
import type { ProtocolWords } from "./words";

export interface CheckSaid {
  readonly tone: "working" | "yes" | "no";
  readonly words: string;
}

/** @param why in the language of the words */
export function checkWords(
  w: ProtocolWords["editor"]["check"],
  check: CheckNow,
  findings: Findings,
  why: (why: Why) => string,
): CheckSaid {
  if (check.at === "waiting") return { tone: "working", words: w.waiting };
  if (check.at === "checking") {
    const { so } = check;
    if (!so) return { tone: "working", words: w.waiting };
    return {
      tone: "working",
      words: so.rulesLooked === 0 ? w.walking(so.states) : w.looking(so.rulesLooked, so.rules),
    };
  }
  const { verdict } = check;
  switch (verdict.verdict) {
    case "proved":
      return { tone: "yes", words: w.proved(verdict.states, verdict.transitions) };
    case "breach":
      return { tone: "no", words: w.breach(findings.count) };
    case "notProved":
      return { tone: "no", words: w.notProved(why(verdict.why)) };
  }
}
