/** The first thing that is wrong with a protocol, in one sentence: why it is a draft and not offered. */
import type { SpokenLanguage } from "../announcements/languages";
import type { Verdict } from "../check/checkProtocol";
import { whyOf } from "../check/story";
import { checkWordsFor } from "../check/words";
import type { Protocol } from "../session/protocol";
import { findingsOf } from "./findings";

export function firstFault(language: SpokenLanguage, verdict: Verdict, protocol: Protocol): string {
  const w = checkWordsFor(language);
  if (verdict.verdict === "notProved") return whyOf(w, protocol, verdict.why);
  const { steps, events, elsewhere } = findingsOf(verdict, protocol);
  const [first] = [...[...steps.values()].flat(), ...[...events.values()].flat(), ...elsewhere];
  return first ? w.rules[first.breach.rule].words : "";
}
