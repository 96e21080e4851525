/**
 * The plan of the breakdown as a small line of time: what was done, what is planned, what stays wet, and now. Pure.
 * Seconds from the left edge; "ready" is the right edge.
 */
import type { Forecast } from "../../turnaround/breakdown/forecast";
import type { PlanStep, Task } from "../../turnaround/problem";

export type BarKind = "done" | "task" | "gloves" | "reapply";

export interface Bar {
  readonly kind: BarKind;
  /** Step of the protocol; null for a change of gloves. */
  readonly step: string | null;
  readonly fromSec: number;
  readonly toSec: number;
}

export interface PlanFace {
  readonly bars: readonly Bar[];
  /** One for each step whose surfaces are wet now, or will be. */
  readonly waits: readonly { readonly step: string; readonly fromSec: number; readonly toSec: number }[];
  readonly nowSec: number;
  readonly spanSec: number;
  readonly readyInSec: number;
  readonly nextInSec: number | null;
  readonly isProved: boolean;
}

/** @param nowMs watched milliseconds of the session */
export function planFace(forecast: Forecast, nowMs: number): PlanFace {
  const { plan, problem, madeAtMs, past, nextSetUpSec } = forecast;
  const leftMs = past[0]?.fromMs ?? madeAtMs;
  const at = (ms: number): number => (ms - leftMs) / 1000;
  const madeSec = at(madeAtMs);
  const nowSec = at(nowMs);
  const bars: Bar[] = [
    ...past.map((p): Bar => ({ kind: "done", step: p.step, fromSec: at(p.fromMs), toSec: at(p.toMs) })),
    ...plan.steps.map((s): Bar => ({ ...barOf(s), fromSec: madeSec + s.startSec, toSec: madeSec + s.endSec })),
  ];
  // Whoever is late is shown late: the right edge never lies behind now.
  const spanSec = Math.max(madeSec + plan.readySec, nowSec, 1);
  const readyInSec = Math.max(0, madeSec + plan.readySec - nowSec);
  return {
    bars,
    waits: problem.tasks.flatMap((task) => waitOf(forecast, task).map((w) => ({ ...w, ...shifted(w, madeSec) }))),
    nowSec,
    spanSec,
    readyInSec,
    nextInSec: nextSetUpSec === null ? null : readyInSec + nextSetUpSec,
    isProved: plan.proved,
  };
}

const barOf = (step: PlanStep): Pick<Bar, "kind" | "step"> =>
  step.kind === "gloves" ? { kind: "gloves", step: null } : { kind: step.kind, step: step.task };

const shifted = (w: { fromSec: number; toSec: number }, by: number) => ({
  fromSec: Math.max(0, w.fromSec + by),
  toSec: w.toSec + by,
});

function waitOf({ plan, problem }: Forecast, task: Task): { step: string; fromSec: number; toSec: number }[] {
  const waits = problem.tasks.flatMap((other) =>
    other.after.flatMap((a) => (a.task === task.id ? [a.minWaitSec] : [])),
  );
  const contactSec = Math.max(0, task.tailSec ?? 0, ...waits);
  const planned = plan.steps.find((s) => s.kind === "task" && s.task === task.id);
  const ago = problem.soFar?.done.find((d) => d.task === task.id)?.agoSec;
  const end = planned?.endSec ?? (ago === undefined ? null : -ago);
  return contactSec === 0 || end === null ? [] : [{ step: task.id, fromSec: end, toSec: end + contactSec }];
}

/** What is still to do, first to last, for those who hear the screen. */
export const stillToDo = (face: PlanFace): readonly Bar[] => face.bars.filter((b) => b.kind !== "done");
