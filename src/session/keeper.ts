/**
 * The one way through. An event is decided, its facts are written to disk, and only then the new state is adopted and
 * told to those who show and speak. One event is in flight at a time; others wait. If the write fails nothing moves.
 */
import { decide, type SessionState } from "../../machines/session/decide";
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import type { SessionFact } from "./fact";

/** What came of one event. `kept: false` means that nothing of it is so. */
export type Moment =
  | {
      readonly kept: true;
      readonly event: SessionEvent;
      readonly way: Way;
      readonly before: SessionState;
      readonly after: SessionState;
      readonly facts: readonly SessionFact[];
    }
  | { readonly kept: false; readonly event: SessionEvent; readonly way: Way; readonly trouble: KeepTrouble };

export interface KeepTrouble {
  readonly code: string;
  readonly message: string;
}

/** Writes all facts of one event, or none. Answers when they are on disk. */
export interface Pen {
  append(facts: readonly SessionFact[], way: Way): Promise<{ ok: true } | ({ ok: false } & KeepTrouble)>;
}

export interface Keeper {
  /** What is so: everything in it is on disk. */
  readonly state: SessionState;
  /** @returns what came of it, after its facts are on disk. Never rejects. */
  tell(event: SessionEvent, way: Way): Promise<Moment>;
  /** Called after each event, in order. */
  onMoment(listen: (moment: Moment) => void): () => void;
}

export function createKeeper(start: SessionState, pen: Pen): Keeper {
  let state = start;
  let last: Promise<unknown> = Promise.resolve();
  const listeners = new Set<(moment: Moment) => void>();

  const carryThrough = async (event: SessionEvent, way: Way): Promise<Moment> => {
    const before = state;
    const { next, facts } = decide(before, event);
    const written = facts.length === 0 ? { ok: true as const } : await pen.append(facts, way);
    if (!written.ok) {
      const { code, message } = written;
      return { kept: false, event, way, trouble: { code, message } };
    }
    state = next;
    return { kept: true, event, way, before, after: next, facts };
  };

  return {
    get state() {
      return state;
    },
    tell(event, way) {
      const turn = last.then(async () => {
        const moment = await carryThrough(event, way);
        for (const listen of listeners) listen(moment);
        return moment;
      });
      last = turn.catch(() => undefined);
      return turn;
    },
    onMoment(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
  };
}
