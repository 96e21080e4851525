/**
 * The turnaround as a planning problem: one pair of hands, work that takes them, waits that run by themselves, and a
 * glove change wherever work goes from soiled to clean. Plain data, whole seconds; second 0 is now.
 */

export type TaskId = string;

/** What a task does to gloves: `soiled` leaves them soiled, `clean` needs them clean, `either` takes them as they are. */
export type Cleanliness = "soiled" | "clean" | "either";

/** "Not before that task is finished, and then no sooner and no later than this." Counted from its end to our start. */
export interface After {
  readonly task: TaskId;
  /** Contact or drying time to let pass, seconds; 0 is plain order. */
  readonly minWaitSec: number;
  /** Our start may be no later than this after its end, seconds. Absent: no latest time. */
  readonly maxWaitSec?: number;
}

/**
 * A surface this task leaves wet, which has to stay wet. Counted from the end of the task; a re-application has to be
 * finished before `reapplyWithinSec` after the last one, and keeps the contact time running. Tasks that wait at least
 * `contactSec` for this one are not begun before enough re-applications are planned.
 */
export interface WetSurface {
  readonly contactSec: number;
  readonly reapplyWithinSec: number;
  /** Hands-on time of one re-application, with the gloves the application itself asks for. */
  readonly reapplySec: number;
}

export interface Task {
  readonly id: TaskId;
  /** What to call it on the screen; its id if absent. */
  readonly label?: string;
  readonly handsOnSec: number;
  readonly cleanliness: Cleanliness;
  readonly after: readonly After[];
  /** Wait after this task before the station counts as ready, seconds. Absent: 0. */
  readonly tailSec?: number;
  /** Not to be started before this second. Absent: 0. */
  readonly notBeforeSec?: number;
  readonly wet?: WetSurface;
}

/**
 * A task that is finished. `agoSec`: credited seconds since its end, so that its waits may still be running (for a wet
 * clock, the seconds *credited*, never the wall clock); absent: all its waits are over. `wettedAgoSec`: seconds since
 * the last re-application, if there was one. A surface that dried too early is not finished: leave its application out.
 */
export interface DoneTask {
  readonly task: TaskId;
  readonly agoSec?: number;
  readonly wettedAgoSec?: number;
}

export interface SoFar {
  readonly done: readonly DoneTask[];
  /** The task the hands are on now; it is finished first and nothing else is begun before. */
  readonly inHand?: { readonly task: TaskId; readonly remainingSec: number };
}

/**
 * Everything the planner knows. Derive one from a protocol by giving each step that needs hands a task in the order
 * written (the last tie-break), each label contact time a `minWaitSec` (and `wet` where the label or the artist says
 * re-apply within a time shorter than the contact), and each rule of the station an `after` with wait 0.
 */
export interface TurnaroundProblem {
  readonly tasks: readonly Task[];
  /** Gloves off, hand hygiene with its dry time, gloves on: seconds, whenever work goes from soiled to clean. */
  readonly gloveChangeSec: number;
  readonly gloves: "soiled" | "clean";
  readonly soFar?: SoFar;
}

/** One stretch of hands-on work in a plan. */
export type PlanStep =
  | { readonly kind: "task"; readonly task: TaskId; readonly startSec: number; readonly endSec: number }
  | { readonly kind: "gloves"; readonly startSec: number; readonly endSec: number }
  | { readonly kind: "reapply"; readonly task: TaskId; readonly startSec: number; readonly endSec: number };

export interface Plan {
  readonly kind: "planned";
  /** The tasks still to do, in order; `steps` has the glove changes and re-applications between them too. */
  readonly order: readonly TaskId[];
  readonly steps: readonly PlanStep[];
  readonly startSec: Readonly<Record<TaskId, number>>;
  readonly readySec: number;
  /** No plan whatever is ready sooner than this. */
  readonly lowerBoundSec: number;
  /** True only if no plan is ready sooner, nor equally soon with fewer glove changes, nor then fewer re-applications. */
  readonly proved: boolean;
  /** True only if, among all such plans, none keeps closer to the written order (first difference decides). */
  readonly writtenOrderProved: boolean;
  readonly gloveChanges: number;
  readonly reapplications: number;
  /** Search nodes spent: the work, in a unit that does not depend on the machine. */
  readonly nodes: number;
}

export type ImpossibleCode =
  | "bad-number"
  | "bad-wet-surface"
  | "duplicate-task"
  | "unknown-task"
  | "too-many-tasks"
  | "cycle"
  | "out-of-order"
  | "window-shorter-than-wait"
  | "window-shorter-than-work"
  | "window-unknown"
  | "rewet-window-too-short"
  | "already-too-late"
  | "no-order-fits";

/** Refused, with the reason in words a practitioner understands. */
export interface Impossible {
  readonly kind: "impossible";
  readonly code: ImpossibleCode;
  readonly words: string;
}

/** The budget ended before any plan was found or excluded. */
export interface Undecided {
  readonly kind: "undecided";
  readonly lowerBoundSec: number;
  readonly nodes: number;
}

export type Planned = Plan | Impossible | Undecided;

/** More would not fit the exact integers that name a set of tasks. */
export const mostTasks = 52;
