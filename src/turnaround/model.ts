/**
 * The problem compiled for the search: tasks still to do as numbers 0..n-1 in written order, what is past as fixed
 * times, and for each task the two figures every bound needs: what must still follow it, and how many glove changes.
 */

import { type Follow, followBounds } from "./follow";
import type { Cleanliness, Task, TurnaroundProblem } from "./problem";

/** A wait between two tasks that are both still to do. `latest` is Infinity without a window. Seconds. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly wait: number;
  readonly latest: number;
}

/** A surface that has to be re-wetted at least once: its contact time is longer than it stays wet. Seconds. */
export interface WetClock {
  /** The application still to do, or -1 if it is past; then `appliedEnd` and `wettedEnd` (both at most 0) hold. */
  readonly task: number;
  readonly id: string;
  readonly contact: number;
  readonly within: number;
  readonly hands: number;
  readonly cleanliness: Cleanliness;
  readonly appliedEnd: number;
  readonly wettedEnd: number;
  /** Tasks that wait for the whole contact time, so for the last re-application. */
  readonly holds: readonly number[];
}

export interface Model extends Follow {
  readonly n: number;
  readonly tasks: readonly Task[];
  readonly hands: readonly number[];
  readonly tail: readonly number[];
  readonly cleanliness: readonly Cleanliness[];
  /** Earliest start from what is past or fixed, and latest start from windows already running (Infinity if none). */
  readonly earliest: readonly number[];
  readonly latest: readonly number[];
  readonly before: readonly (readonly Link[])[];
  readonly after: readonly (readonly Link[])[];
  readonly windows: readonly Link[];
  readonly clocks: readonly WetClock[];
  /** Tasks in an order in which each comes after all that it waits for. */
  readonly inOrder: readonly number[];
  readonly gloveChange: number;
  readonly soiledAtStart: boolean;
  /** Longest wait still running after what is past: the station is not ready before. */
  readonly pastTail: number;
  readonly inHand: number;
  /** True when some later decision can make an earlier task start later than it could. */
  readonly canPushBack: boolean;
}

/** Compiles a problem that was not refused. */
export function compile(problem: TurnaroundProblem): Model {
  const done = new Map((problem.soFar?.done ?? []).map((one) => [one.task, one]));
  const tasks = problem.tasks.filter((task) => !done.has(task.id));
  const index = new Map(tasks.map((task, at) => [task.id, at]));
  const byId = new Map(problem.tasks.map((task) => [task.id, task]));
  const inHandId = problem.soFar?.inHand?.task;
  const inHand = inHandId === undefined ? -1 : (index.get(inHandId) ?? -1);
  const hands = tasks.map((task, at) => (at === inHand ? (problem.soFar?.inHand?.remainingSec ?? 0) : task.handsOnSec));

  const earliest = tasks.map((task, at) => (at === inHand ? 0 : (task.notBeforeSec ?? 0)));
  const latest = tasks.map(() => Number.POSITIVE_INFINITY);
  const before: Link[][] = tasks.map(() => []);
  const after: Link[][] = tasks.map(() => []);
  tasks.forEach((task, to) => {
    if (to === inHand) return;
    for (const wait of task.after) {
      const from = index.get(wait.task);
      if (from !== undefined) {
        const link = { from, to, wait: wait.minWaitSec, latest: wait.maxWaitSec ?? Number.POSITIVE_INFINITY };
        before[to]?.push(link);
        after[from]?.push(link);
        continue;
      }
      const agoSec = done.get(wait.task)?.agoSec;
      if (agoSec === undefined) continue;
      earliest[to] = Math.max(earliest[to] ?? 0, wait.minWaitSec - agoSec);
      if (wait.maxWaitSec !== undefined) latest[to] = Math.min(latest[to] ?? 0, wait.maxWaitSec - agoSec);
    }
  });

  const clocks = problem.tasks.flatMap((task): WetClock[] => {
    const wet = task.wet;
    if (!wet || wet.contactSec <= wet.reapplyWithinSec) return [];
    const past = done.get(task.id);
    const ago = past?.agoSec;
    if (past && (ago === undefined || ago >= wet.contactSec)) return [];
    const wettedAgo = Math.min(ago ?? 0, past?.wettedAgoSec ?? ago ?? 0);
    if (past && ago !== undefined && wettedAgo <= ago + wet.reapplyWithinSec - wet.contactSec) return [];
    return [
      {
        task: index.get(task.id) ?? -1,
        id: task.id,
        contact: wet.contactSec,
        within: wet.reapplyWithinSec,
        hands: wet.reapplySec,
        cleanliness: task.cleanliness,
        appliedEnd: -(ago ?? 0),
        wettedEnd: -wettedAgo,
        holds: tasks.flatMap((other, at) =>
          other.after.some((wait) => wait.task === task.id && wait.minWaitSec >= wet.contactSec) ? [at] : [],
        ),
      },
    ];
  });

  const pastTail = Math.max(
    0,
    ...[...done.values()].map((one) => {
      const task = byId.get(one.task);
      if (one.agoSec === undefined || !task) return 0;
      return (task.tailSec ?? 0) - one.agoSec;
    }),
  );
  const shape = {
    n: tasks.length,
    hands,
    tail: tasks.map((task) => task.tailSec ?? 0),
    cleanliness: tasks.map((task) => task.cleanliness),
    before,
    after,
    inOrder: topological(before),
    gloveChange: problem.gloveChangeSec,
  };
  const windows = before.flat().filter((link) => link.latest < Number.POSITIVE_INFINITY);
  return {
    ...shape,
    ...followBounds(shape),
    tasks,
    earliest,
    latest,
    windows,
    clocks,
    soiledAtStart: glovesNow(problem.gloves, tasks[inHand]?.cleanliness),
    pastTail,
    inHand,
    canPushBack: windows.length > 0 || clocks.length > 0,
  };
}

/** The task in hand says what the gloves are, whatever they were said to be. */
function glovesNow(said: "soiled" | "clean", inHand: Cleanliness | undefined): boolean {
  return inHand === "soiled" || (inHand !== "clean" && said === "soiled");
}

function topological(before: readonly (readonly Link[])[]): number[] {
  const order: number[] = [];
  const placed = before.map(() => false);
  while (order.length < before.length) {
    const next = before.findIndex((links, at) => !placed[at] && links.every((link) => placed[link.from]));
    if (next < 0) throw new Error("a cycle reached the planner; refusal() must be asked first");
    placed[next] = true;
    order.push(next);
  }
  return order;
}
