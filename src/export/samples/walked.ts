/** A session of any protocol walked from its first word to its close, with things that happen at work: for samples. */
import { begin, decide, type SessionState } from "../../../machines/session/decide";
import type { SessionEvent } from "../../../machines/session/vocabulary";
import { standingOf } from "../../screen/session/standing";
import type { SessionInput } from "../../session/sessionInput";
import type { WetClock } from "../../session/wetClock";

export interface Day {
  /** What happens at work, in order, each walked to the end of its flow before the next. */
  readonly atWork: readonly SessionEvent[];
  /** Seconds of work before each of them. */
  readonly secondsBetween: number;
  /** Put in once, at the given number of events told; for what goes wrong. */
  readonly at: Readonly<Record<number, SessionEvent>>;
  /** How many fewer sharps are found than were opened, and explained so. */
  readonly missing: number;
}
export const quietDay: Day = { atWork: [], secondsBetween: 60, at: {}, missing: 0 };

const mostEvents = 40_000;

/** @returns the events after `session.begin`, up to and with the confirmed close. */
export function walked(input: SessionInput, today: string, day: Partial<Day> = {}): readonly SessionEvent[] {
  const { atWork, secondsBetween, at, missing } = { ...quietDay, ...day };
  const events: SessionEvent[] = [];
  let state = begin(input);
  const tell = (event: SessionEvent) => {
    if (event.type !== "session.begin") events.push(event);
    state = decide(state, event).next;
  };
  tell({ type: "session.begin", today });
  let left = [...atWork];
  let work = secondsBetween;
  while (state.context.world.phase !== "closed") {
    if (events.length > mostEvents) throw new Error(`The walk does not end: ${JSON.stringify(standingOf(state).now)}`);
    const put = at[events.length];
    if (put) tell(put);
    const standing = standingOf(state);
    if (standing.now.kind === "atWork" && standing.question === null) {
      if (work-- > 0) tell({ type: "time.witnessed", elapsedMs: 1000 });
      else {
        const [next, ...rest] = left;
        left = rest;
        work = secondsBetween;
        tell(next ?? { type: "procedure.finish" });
      }
    } else for (const event of answerTo(state, missing)) tell(event);
  }
  return events;
}

function answerTo(state: SessionState, missing: number): readonly SessionEvent[] {
  const { now, question } = standingOf(state);
  const { clocks, sharps } = state.context.world;
  if (question) {
    switch (question.kind) {
      case "wetness": {
        const [surface = ""] = question.surfaces;
        const about = clocks[surface]?.state === "doubtful" ? "stillWet" : "stayedWet";
        return [
          { type: "question.asked", about, surfaces: [surface] },
          { type: "answer.yes", surface },
        ];
      }
      case "sharps":
        if (missing === 0) return [{ type: "answer.confirm" }];
        return [{ type: "sharps.counted", inContainer: sharps.opened - missing }];
      case "discrepancy":
        return [{ type: "sharps.explained", reason: "lost" }];
      case "reason":
        return [{ type: "reason.given", reason: "ownDecision" }];
      case "item":
        return [{ type: "answer.yes" }];
      case "firstAid":
        return [{ type: "answer.no" }];
      default:
        return [{ type: "answer.confirm" }];
    }
  }
  const thirsty = Object.values(clocks).find(wantsSpray);
  if (thirsty) return [{ type: "surface.applied", surface: thirsty.surface }];
  if (now.kind === "mayClose") return [{ type: "session.close" }];
  if (now.kind === "listOver") return [second];
  // A wipe is reported when its clock has come up; the lists stand on it.
  const wipes =
    now.kind === "steps" ? now.steps.flatMap((step) => step.effects).filter(({ verb }) => verb === "wipe") : [];
  const waits = wipes.some((effect) => "item" in effect && clocks[effect.item]?.state === "counting");
  return [waits ? second : { type: "step.done" }, ...(waits ? [] : [second])];
}

const second: SessionEvent = { type: "time.witnessed", elapsedMs: 1000 };

/** A quarter of a minute before the label's time to apply again. */
const wantsSpray = ({ state, sinceAppliedMs, reapplyWithinMs }: WetClock): boolean =>
  state === "dry" || (state === "counting" && reapplyWithinMs !== null && sinceAppliedMs > reapplyWithinMs - 15_000);
