/** What the checker found, sorted to where it belongs: to a step, to something that can happen at work, or to the close. */
import type { Breach, Verdict } from "../check/checkProtocol";
import type { Why } from "../check/why";
import type { EventId, Protocol } from "../session/protocol";

/** A breach with the protocol as it was when it was found, so that it can be told in any language. */
export interface DraftFinding {
  readonly breach: Breach;
  readonly protocol: Protocol;
}

export interface Findings {
  readonly steps: ReadonlyMap<string, readonly DraftFinding[]>;
  readonly events: ReadonlyMap<EventId, readonly DraftFinding[]>;
  /** At the close, or at no step in particular. */
  readonly elsewhere: readonly DraftFinding[];
  readonly count: number;
  /** Why it is not proved though nothing was found. */
  readonly why: Why | null;
}

export const noFindings: Findings = { steps: new Map(), events: new Map(), elsewhere: [], count: 0, why: null };

/** @param protocol the one that was judged */
export function findingsOf(verdict: Verdict, protocol: Protocol): Findings {
  if (verdict.verdict === "proved") return noFindings;
  if (verdict.verdict === "notProved") return { ...noFindings, why: verdict.why };
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
    if (breach.step !== null) put(steps, breach.step, { breach, protocol });
    else if (last?.kind === "event") put(events, last.event, { breach, protocol });
    else elsewhere.push({ breach, protocol });
  }
  return { steps, events, elsewhere, count: told.size, why: null };
}

function put<K>(to: Map<K, DraftFinding[]>, key: K, finding: DraftFinding): void {
  to.set(key, [...(to.get(key) ?? []), finding]);
}
