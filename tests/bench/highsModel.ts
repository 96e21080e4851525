/**
 * The same planning problem as a mixed-integer programme for HiGHS, on a time grid: one 0/1 variable for each task and
 * each moment it may start. Exact because every time in the problem is a multiple of the grid, and start times that are
 * differences of such times may be multiples too. No idea is shared with our solver: neither orders nor bounds.
 */

import type { TurnaroundProblem } from "../../src/turnaround/problem";

/** Objective weights: one grid step of ready time outweighs any glove changes, one change any re-applications. */
const perStep = 1_000;
const perChange = 30;

/**
 * @param gridSec divides every time in the problem.
 * @param horizonSec the last moment allowed; any known plan's ready time will do.
 * @returns text in CPLEX LP format; its optimum is `objectiveOf` the best plan.
 */
export function timeGridModel(problem: TurnaroundProblem, gridSec: number, horizonSec: number): string {
  const steps = (sec: number) => {
    if (sec % gridSec !== 0) throw new Error(`${sec} s is not on the grid of ${gridSec} s`);
    return sec / gridSec;
  };
  if (problem.soFar) throw new Error("the grid model plans from the start only");
  const last = steps(horizonSec);
  const place = new Map(problem.tasks.map((task, at) => [task.id, at]));
  const tasks = problem.tasks.map((task, at) => ({
    at,
    hands: steps(task.handsOnSec),
    tail: steps(task.tailSec ?? 0),
    kind: task.cleanliness,
    head: steps(task.notBeforeSec ?? 0),
    after: task.after.map((after) => ({
      from: place.get(after.task) ?? 0,
      wait: steps(after.minWaitSec),
      latest: after.maxWaitSec === undefined ? undefined : steps(after.maxWaitSec),
    })),
    wet: task.wet && {
      contact: steps(task.wet.contactSec),
      within: steps(task.wet.reapplyWithinSec),
      hands: steps(task.wet.reapplySec),
    },
  }));
  const change = steps(problem.gloveChangeSec);
  const rows: string[] = [];
  const binaries: string[] = [];
  const starts = (at: number) => {
    const task = tasks[at];
    return task ? range(task.head, last - task.hands - task.tail) : [];
  };
  const start = (at: number, t: number) => `x${at}_${t}`;
  const again = (at: number, t: number) => `r${at}_${t}`;
  const agains = (at: number) => range(0, last - (tasks[at]?.wet?.hands ?? 0));
  const rewetted = tasks.filter((task) => task.wet && task.wet.contact > task.wet.within);

  for (const task of tasks) {
    binaries.push(...starts(task.at).map((t) => start(task.at, t)));
    rows.push(`${sum(starts(task.at).map((t) => start(task.at, t)))} = 1`);
    // The station is ready no sooner than the end of this task and of the wait after it.
    const end = starts(task.at).map((t) => `- ${t + task.hands + task.tail} ${start(task.at, t)}`);
    rows.push(`ready ${end.join(" ")} >= 0`);
    for (const after of task.after) {
      const gap = (tasks[after.from]?.hands ?? 0) + after.wait;
      for (const t of starts(task.at)) {
        // Begun by t only if the earlier task had begun by t - gap.
        const us = starts(task.at).filter((u) => u <= t);
        const them = starts(after.from).filter((u) => u <= t - gap);
        rows.push(`${sum(us.map((u) => start(task.at, u)))} ${minus(them.map((u) => start(after.from, u)))} <= 0`);
      }
      if (after.latest === undefined) continue;
      const longest = (tasks[after.from]?.hands ?? 0) + after.latest;
      for (const t of range(longest, last)) {
        const us = starts(task.at).filter((u) => u <= t);
        const them = starts(after.from).filter((u) => u <= t - longest);
        if (them.length > 0)
          rows.push(
            `${sum([...us.map((u) => start(task.at, u)), "zero"])} ${minus(them.map((u) => start(after.from, u)))} >= 0`,
          );
      }
    }
  }
  for (const task of rewetted) {
    const wet = task.wet;
    if (!wet) continue;
    binaries.push(...agains(task.at).map((t) => again(task.at, t)));
    const ends = starts(task.at).filter((s) => s + task.hands + wet.contact > last);
    for (const s of ends) rows.push(`${start(task.at, s)} <= 1`);
    for (const s of starts(task.at)) {
      const applied = s + task.hands;
      // At every moment of the contact time some wetting must have ended within the last `within`.
      for (const t of range(applied + wet.within + 1, Math.min(applied + wet.contact, last))) {
        const fresh = agains(task.at).filter(
          (u) => u >= applied && u + wet.hands <= t && u + wet.hands >= t - wet.within,
        );
        rows.push(`${sum([...fresh.map((u) => again(task.at, u)), "zero"])} - ${start(task.at, s)} >= 0`);
      }
    }
  }
  const changes = range(0, last - change);
  binaries.push(...changes.map((t) => `g_${t}`));
  for (const t of range(0, last - 1)) {
    // One pair of hands.
    const busy = [
      ...tasks.flatMap((task) =>
        starts(task.at)
          .filter((s) => s <= t && t < s + task.hands)
          .map((s) => start(task.at, s)),
      ),
      ...rewetted.flatMap((task) =>
        agains(task.at)
          .filter((s) => s <= t && t < s + (task.wet?.hands ?? 0))
          .map((s) => again(task.at, s)),
      ),
      ...changes.filter((s) => s <= t && t < s + change).map((s) => `g_${s}`),
    ];
    if (busy.length > 0) rows.push(`${sum(busy)} <= 1`);
    // c_t: gloves are clean during step t. They become so only by a change that has just ended.
    const made = t - change >= 0 ? `- g_${t - change}` : "";
    if (t > 0) rows.push(`c_${t} - c_${t - 1} ${made} <= 0`);
    else if (problem.gloves === "soiled") rows.push("c_0 <= 0");
    else rows.push("c_0 <= 1");
    for (const kind of ["soiled", "clean"] as const) {
      const doing = [
        ...tasks
          .filter((task) => task.kind === kind)
          .flatMap((task) =>
            starts(task.at)
              .filter((s) => s <= t && t < s + task.hands)
              .map((s) => start(task.at, s)),
          ),
        ...rewetted
          .filter((task) => task.kind === kind)
          .flatMap((task) =>
            agains(task.at)
              .filter((s) => s <= t && t < s + (task.wet?.hands ?? 0))
              .map((s) => again(task.at, s)),
          ),
      ];
      if (doing.length > 0) rows.push(kind === "clean" ? `${sum(doing)} - c_${t} <= 0` : `${sum(doing)} + c_${t} <= 1`);
    }
  }
  const cost = [
    `${perStep} ready`,
    ...changes.map((t) => `${perChange} g_${t}`),
    ...rewetted.flatMap((task) => agains(task.at).map((t) => again(task.at, t))),
  ];
  const cleanBounds = range(0, last - 1).map((t) => ` 0 <= c_${t} <= 1`);
  return [
    "Minimize",
    ` cost: ${wrapped(cost.join(" + "))}`,
    "Subject To",
    ...rows.map((row, at) => ` k${at}: ${wrapped(row)}`),
    "Bounds",
    " zero = 0",
    ` 0 <= ready <= ${last}`,
    ...cleanBounds,
    "Binaries",
    ...binaries.map((name) => ` ${name}`),
    "End",
    "",
  ].join("\n");
}

/** What the model's optimum must be for a plan of this value. */
export function objectiveOf(
  plan: { readySec: number; gloveChanges: number; reapplications: number },
  gridSec: number,
): number {
  return (plan.readySec / gridSec) * perStep + plan.gloveChanges * perChange + plan.reapplications;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at);
}

const sum = (names: readonly string[]): string => (names.length > 0 ? names.join(" + ") : "zero");

const minus = (names: readonly string[]): string => names.map((name) => `- ${name}`).join(" ");

/** The format limits the length of a line. */
function wrapped(row: string): string {
  const words = row.split(" ");
  const lines: string[] = [];
  for (let at = 0; at < words.length; at += 20) lines.push(words.slice(at, at + 20).join(" "));
  return lines.join("\n  ");
}
