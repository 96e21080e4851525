/** A session walked as a person would: each step done as asked, its wet clocks waited out, re-applied and attested. */
import type { SessionEvent } from "../../machines/session/vocabulary";
import { stepHere } from "../../src/session/world";
import { type Run, told } from "./session";

const done: SessionEvent = { type: "step.done" };
/** More than any list needs. */
const patience = 400;

/** Does the step here as asked, waiting out its clocks. */
export function step(run: Run): Run {
  const here = stepHere(run.state.context.input, run.state.context.world);
  if (!here) return run;
  let now = run;
  for (const effect of here.effects) {
    if (effect.verb !== "wipe") continue;
    const surface = effect.item;
    for (let i = 0; i < patience; i += 1) {
      const clock = now.state.context.world.clocks[surface];
      if (!clock || clock.state === "ready") break;
      if (clock.state === "timeUp") now = told(now, { type: "answer.yes", surface });
      else if (clock.reapplyAsked || clock.state === "dry") now = told(now, { type: "surface.applied", surface });
      else now = told(now, { type: "time.witnessed", elapsedMs: 5_000 });
    }
  }
  const { opened } = now.state.context.world.sharps;
  return told(now, here.kind === "count" ? { type: "sharps.counted", inContainer: opened } : done);
}

/** Step by step, until it is so; where nothing is asked for, the wish to go on is said once more. */
export function walk(run: Run, isThere: (run: Run) => boolean): Run {
  let now = run;
  for (let i = 0; i < patience && !isThere(now); i += 1) {
    const next = step(now);
    if (next === now) return told(now, done);
    now = next;
  }
  return now;
}
