/** What a check says, in each language: the rules in plain words, how a story is told, why nothing is proved. */
import type { SpokenLanguage } from "../../announcements/languages";
import type { EventId } from "../../session/protocol";
import type { RuleId } from "../rules";
import type { Why } from "../why";

/** Rules that are broken at the close, or because it comes too early. */
export type CloseRuleId =
  | "handsLast"
  | "sharpsCounted"
  | "reusableReady"
  | "criticalSterilised"
  | "singleUseDiscarded"
  | "noBarrierLeft"
  | "woundCovered"
  | "wipedAtTheEnd";

export interface CheckWords {
  readonly language: SpokenLanguage;
  readonly rules: Readonly<Record<RuleId, { readonly words: string; readonly source: string }>>;
  readonly rule: (words: string, source: string) => string;
  readonly reports: Readonly<Record<EventId, string>>;
  /** A step as it is quoted: what is spoken, and its id. */
  readonly step: (say: string, id: string) => string;
  readonly does: (step: string) => string;
  readonly doesMany: (many: number, first: string, last: string) => string;
  readonly leavesOut: (step: string) => string;
  readonly finishes: string;
  readonly hurt: string;
  readonly closes: string;
  readonly goesOn: (step: string) => string;
  readonly asks: (step: string) => string;
  readonly asksAbout: (step: string, things: string) => string;
  readonly atClose: Readonly<Record<CloseRuleId, string>>;
  /** Where no rule of the close says more. */
  readonly notAsItShouldBe: string;
  readonly hands: string;
  readonly sharps: string;
  readonly why: { readonly [C in Why["code"]]: (why: Extract<Why, { code: C }>, told: ToldOf) => string };
}

/** A rule and things as the language says them. */
export interface ToldOf {
  readonly rule: (id: RuleId) => string;
  readonly things: (ids: readonly string[]) => string;
}
