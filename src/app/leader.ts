/**
 * Leads the breakdown by the plan. After every fact what is left is planned anew; what that changes is told to the
 * session as an event like any other, and the ready time is said where it was not yet, or has moved. Facts decide; if
 * there is no planner, or no plan, the list is walked as it is written.
 */
import type { SessionState } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import type { ReadyTime } from "../announcements/sayPlan";
import type { Moment } from "../session/keeper";
import { stepHere, type World } from "../session/world";
import { inWrittenOrder, lessAndLess, restOfBreakdown } from "../turnaround/breakdown/derive";
import type { Forecast, WatchedMs } from "../turnaround/breakdown/forecast";
import { leadFrom } from "../turnaround/breakdown/lead";
import type { PlannerPort } from "../turnaround/plannerPort";
import type { Plan, TurnaroundProblem } from "../turnaround/problem";

export interface Leader {
  readonly forecast: Forecast | null;
  /** Until the station is ready, by the plan; null without one. */
  readonly readyInMs: number | null;
  after(moment: Moment): void;
  close(): void;
}

export interface LeaderParts {
  readonly planner: PlannerPort;
  readonly state: () => SessionState;
  readonly tell: (event: SessionEvent) => void;
  readonly say: (ready: ReadyTime, ms: number) => void;
  readonly changed: () => void;
  /** False: only foretells, for a recorded session that is walked as it was. */
  readonly leads: boolean;
}

type Answered = { readonly plan: Plan; readonly problem: TurnaroundProblem } | { readonly plan: null };

/** A step just read out is not yet in anybody's hand. */
const inHandAfterMs = 5_000;
/** A ready time that moves by less, or moves back before this, is nothing to say. */
const movedMs = 120_000;
const standsForMs = 90_000;

export function createLeader({ planner, state, tell, say, changed, leads }: LeaderParts): Leader {
  let forecast: Forecast | null = null;
  let promisedMs: WatchedMs | null = null;
  let movedAtMs: WatchedMs | null = null;
  let here: { step: string | null; fromMs: WatchedMs } = { step: null, fromMs: 0 };
  let past: Forecast["past"] = [];
  let nextSetUpSec: number | null = null;
  let hasNext = false;

  const nowMs = (): WatchedMs => {
    const { world, pendingMs } = state().context;
    return world.witnessedMs + pendingMs;
  };
  const readyAtMs = (of: Forecast): WatchedMs => of.madeAtMs + of.plan.readySec * 1000;

  const forget = (): void => {
    if (forecast === null) return;
    forecast = null;
    changed();
  };

  const promise = (of: Forecast): void => {
    const ready = readyAtMs(of);
    if (promisedMs === null) {
      sayReady("first", ready);
      return;
    }
    if (Math.abs(ready - promisedMs) < movedMs) {
      movedAtMs = null;
      return;
    }
    movedAtMs ??= nowMs();
    if (nowMs() - movedAtMs >= standsForMs) sayReady(ready > promisedMs ? "later" : "sooner", ready);
  };

  const sayReady = (kind: ReadyTime, ready: WatchedMs): void => {
    promisedMs = ready;
    movedAtMs = null;
    say(kind, Math.max(1, ready - nowMs()));
  };

  const planNext = async (): Promise<void> => {
    if (hasNext) return;
    const answer = await planner.ask(inWrittenOrder(state().context.input, false, "setUp"));
    if (answer === null) return;
    hasNext = true;
    nextSetUpSec = answer.kind === "planned" ? answer.readySec : null;
    if (forecast) forecast = { ...forecast, nextSetUpSec };
    changed();
  };

  /** The first problem of these that has a plan; null once a newer question stands. */
  const planOf = async (problems: readonly TurnaroundProblem[]): Promise<Answered | null> => {
    const asked = state().context.world.count;
    for (const problem of problems) {
      const answer = await planner.ask(problem);
      if (answer === null || state().context.world.count !== asked) return null;
      if (answer.kind === "planned") return { plan: answer, problem };
    }
    return { plan: null };
  };

  const planAnew = async (problems: readonly TurnaroundProblem[]): Promise<void> => {
    const madeAtMs = nowMs();
    const found = await planOf(problems);
    if (found === null) return;
    if (found.plan === null) {
      forget();
      return;
    }
    const { plan: answer, problem } = found;
    const { input, world } = state().context;
    forecast = { plan: answer, problem, madeAtMs, past, nextSetUpSec };
    changed();
    if (leads) {
      promise(forecast);
      const lead = leadFrom(input, world, answer);
      if (lead?.kind === "order") tell({ type: "plan.chosen", order: lead.order });
      if (lead?.kind === "reapply") tell({ type: "reapply.planned", surfaces: lead.surfaces });
      if (lead !== null) return;
    }
    await planNext();
  };

  const follow = (world: World, moment: Extract<Moment, { kept: true }>): void => {
    const step = stepHere(state().context.input, world)?.id ?? null;
    const done = moment.facts.flatMap((f) => (f.type === "v1.StepDone" ? [f.step] : []));
    const now = nowMs();
    if (here.step !== null && done.includes(here.step)) past = [...past, { ...here, step: here.step, toMs: now }];
    if (step !== here.step || done.length > 0) here = { step, fromMs: now };
  };

  return {
    get forecast() {
      return forecast;
    },
    get readyInMs() {
      return forecast && Math.max(1, readyAtMs(forecast) - nowMs());
    },
    after(moment) {
      if (!moment.kept || moment.facts.length === 0) return;
      const { input, world } = state().context;
      if (world.phase !== "breakdown") {
        past = [];
        forget();
        return;
      }
      follow(world, moment);
      const forMs = nowMs() - here.fromMs;
      const inHandSec = forMs < inHandAfterMs ? null : forMs / 1000;
      const problems = lessAndLess.flatMap((how) => restOfBreakdown(input, world, inHandSec, how) ?? []);
      if (problems.length === 0) forget();
      else void planAnew(problems);
    },
    close: () => planner.close(),
  };
}
