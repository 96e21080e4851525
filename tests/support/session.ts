/** Walks the real chart in tests: events in, facts and state out. */
import { begin, decide, type SessionState } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { SessionFact } from "../../src/session/fact";
import type { Protocol } from "../../src/session/protocol";
import type { SessionInput } from "../../src/session/sessionInput";

export const today = "2026-11-25";

/** A session of the protocol as the prepare screen would hand it over. */
export const inputFor = (protocol: Protocol, change: Partial<SessionInput> = {}): SessionInput => ({
  protocol,
  labels: Object.fromEntries(protocol.products.map((p) => [p.id, p.label])),
  lots: [],
  station: "Station 1",
  artist: "Artist A",
  clientReference: "C-001",
  address: "station",
  language: "en",
  zone: "Europe/Lisbon",
  brisk: false,
  carriedOver: [],
  ...change,
});

export interface Run {
  readonly state: SessionState;
  readonly facts: readonly SessionFact[];
}

export function told(run: Run, ...events: readonly SessionEvent[]): Run {
  return events.reduce<Run>(({ state, facts }, event) => {
    const decision = decide(state, event);
    return { state: decision.next, facts: [...facts, ...decision.facts] };
  }, run);
}

export const begun = (input: SessionInput): Run =>
  told({ state: begin(input), facts: [] }, { type: "session.begin", today });

/** Watched time in ticks of a second, as a session lives it. */
export const passing = (run: Run, seconds: number): Run =>
  told(run, ...Array.from({ length: seconds }, (): SessionEvent => ({ type: "time.witnessed", elapsedMs: 1000 })));

export const types = (facts: readonly SessionFact[]): string[] => facts.map((f) => f.type.slice(3));
