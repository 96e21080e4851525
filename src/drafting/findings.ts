/** What the checker found, sorted to where it belongs: to a step, to something that can happen at work, or to the close. */
import type { Breach, Verdict } from "../check/checkProtocol";
import { type RuleId, rules } from "../check/rules";
import type { EventId } from "../session/protocol";

export interface DraftFinding {
  readonly rule: RuleId;
  readonly words: string;
  readonly source: string;
  /** The shortest way there, step by step, in plain words. */
  readonly story: readonly string[];
}

export interface Findings {
  readonly steps: ReadonlyMap<string, readonly DraftFinding[]>;
  readonly events: ReadonlyMap<EventId, readonly DraftFinding[]>;
  /** At the close, or at no step in particular. */
  readonly elsewhere: readonly DraftFinding[];
  readonly count: number;
  /** Why it is not proved though nothing was found. */
  readonly why: string | null;
}

const none: Findings = { steps: new Map(), events: new Map(), elsewhere: [], count: 0, why: null };

export function findingsOf(verdict: Verdict): Findings {
  if (verdict.verdict === "proved") return none;
  if (verdict.verdict === "notProved") return { ...none, why: verdict.why };
  const steps = new Map<string, DraftFinding[]>();
  const events = new Map<EventId, DraftFinding[]>();
  const elsewhere: DraftFinding[] = [];
  const told = new Set<string>();
  for (const breach of verdict.breaches) {
    const last = breach.moves.at(-1);
    // The shortest comes first: another way to the same rule at the same place adds nothing to mend.
    const key = `${breach.rule} ${breach.step ?? (last?.kind === "event" ? last.event : last?.kind)}`;
    if (told.has(key)) continue;
    told.add(key);
    if (breach.step !== null) put(steps, breach.step, breach);
    else if (last?.kind === "event") put(events, last.event, breach);
    else elsewhere.push(findingOf(breach));
  }
  return { steps, events, elsewhere, count: told.size, why: null };
}

function put<K>(to: Map<K, DraftFinding[]>, key: K, breach: Breach): void {
  to.set(key, [...(to.get(key) ?? []), findingOf(breach)]);
}

/** The rule stands apart, so the line that repeats it at the end of the story is left out. */
const findingOf = ({ rule, story }: Breach): DraftFinding => {
  const { words, source } = rules[rule];
  return { rule, words, source, story: story.slice(0, -1) };
};
