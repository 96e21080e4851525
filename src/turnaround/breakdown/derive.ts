/**
 * The planning problem of a breakdown, from the protocol, the labels in use and what is so: nothing is entered twice.
 * Each step that takes hands is a task with the step's own seconds; the rules of order are its "after"; the label's
 * contact time is the wait before the wipe, its re-apply time the window. A full change of gloves in the list is no
 * task but the setup that the planner puts wherever work goes from soiled to clean.
 */
import { labelOf, productFor } from "../../../machines/session/lookUp";
import { isAdded, placeForAdded } from "../../session/addedSteps";
import type { Label, Step } from "../../session/protocol";
import type { SessionInput } from "../../session/sessionInput";
import { isLeftAlone } from "../../session/station";
import { leftMs, type WetClock } from "../../session/wetClock";
import { flowHere, indexHere, stepsHere, type World } from "../../session/world";
import type { After, DoneTask, Task, TurnaroundProblem } from "../problem";
import { isChange, runsOfHands } from "./gloveChanges";
import { ordersOf } from "./orders";
import { glovesOf } from "./rules";

/** The list, and the labels of the products in use. */
export type Labels = Pick<SessionInput, "protocol" | "labels">;

/** How punctual hands are taken to be. */
export interface Punctual {
  /** Wetting again is planned to be done this long before the product may be dry, where there is room for that. */
  readonly slackSec: number;
  /** So many of the wet steps, the nearest to drying first, are given up and wetted from the start. */
  readonly givenUp: number;
}
const punctual: Punctual = { slackSec: 15, givenUp: 0 };

/** What is tried when there is no plan: less slack, then one wet step after another given up. */
export const lessAndLess: readonly Punctual[] = [
  punctual,
  ...[0, 1, 2, 3, 4].map((givenUp) => ({ slackSec: 0, givenUp })),
];

/** A step, and what of it is still to do. */
interface Piece {
  readonly step: Step;
  /** Its place in writing; between two of those for a step that a slip added. */
  readonly at: number;
}

/** From the first step of the breakdown, with gloves that have worked. */
export const wholeBreakdown = (of: Labels): TurnaroundProblem => problemOf(of, of.protocol.breakdown, [], "soiled", {});

/** The same with every step begun only when the one written before it is done; `beside`: and its wet time is over. */
export function inWrittenOrder(
  of: Labels,
  beside: boolean,
  list: "breakdown" | "setUp" = "breakdown",
): TurnaroundProblem {
  const problem = list === "setUp" ? problemOf(of, of.protocol.setUp, [], "clean", {}) : wholeBreakdown(of);
  const tasks = problem.tasks.map((task, at): Task => {
    const previous = problem.tasks[at - 1];
    if (!previous) return task;
    const own = task.after.find((a) => a.task === previous.id)?.minWaitSec ?? 0;
    const wait = beside ? wetSecOf(of, previous.id) : 0;
    const others = task.after.filter((a) => a.task !== previous.id);
    return { ...task, after: [...others, { task: previous.id, minWaitSec: Math.max(own, wait) }] };
  });
  return { ...problem, tasks };
}

/**
 * What is left of the breakdown, as it stands now.
 * @param inHandForSec how long the hands have been on the step here; null while nothing is in hand
 * @returns null where no breakdown is being walked, or nothing of it is left
 */
export function restOfBreakdown(
  input: SessionInput,
  world: World,
  inHandForSec: number | null,
  how: Punctual = punctual,
): TurnaroundProblem | null {
  if (world.phase !== "breakdown" || world.place?.list !== "breakdown" || world.exposure === "firstAid") return null;
  const flow = flowHere(world) === null ? [] : stepsHere(input, world).slice(indexHere(world));
  const steps = stepsHere(input, { ...world, flows: [] });
  const isLeft = (s: Step, at: number): boolean => at >= Number(world.place?.index) && !world.done.includes(s.id);
  const counted = (s: Step): Step => withoutOutOfUse(s, world);
  const left = steps.filter(isLeft).map(counted);
  const behind = steps.filter((s, at) => !isLeft(s, at)).map(counted);
  if (left.length === 0 && Object.values(world.clocks).every((c) => c.state === "ready")) return null;
  const willBeClean = flow.some((s) => s.effects.some((e) => e.verb === "don"));
  const gloves = world.station.hands === "glovedSoiled" && !willBeClean ? "soiled" : "clean";
  const problem = problemOf(input, left, behind, gloves, world.clocks, how);
  if (flow.length > 0)
    return afterSeconds(
      problem,
      flow.reduce((sum, s) => sum + s.handsOnSec, 0),
    );
  const here = left[0];
  const task = problem.tasks.find((t) => t.id === here?.id);
  if (inHandForSec === null || !here || !task || waitsForWet(here, world)) return problem;
  const inHand = { task: here.id, remainingSec: Math.max(0, task.handsOnSec - Math.floor(inHandForSec)) };
  return { ...problem, soFar: { done: [], ...problem.soFar, inHand } };
}

/** What is out of use is neither cleaned nor wetted nor wiped: the step takes less by its share, and nothing waits for it. */
function withoutOutOfUse(step: Step, { station }: World): Step {
  const effects = step.effects.filter((e) => !("item" in e && isLeftAlone(station.items[e.item], e)));
  if (effects.length === step.effects.length) return step;
  const share = workIn(effects) / Math.max(1, workIn(step.effects));
  return { ...step, effects, handsOnSec: Math.max(1, Math.ceil(step.handsOnSec * share)) };
}

const workIn = (effects: Step["effects"]): number => effects.filter((e) => e.verb !== "touch").length;

/** What happens meanwhile, fresh gloves perhaps, takes the hands first. */
const afterSeconds = (problem: TurnaroundProblem, sec: number): TurnaroundProblem => ({
  ...problem,
  tasks: problem.tasks.map((task) => ({ ...task, notBeforeSec: sec })),
});

/** A wipe whose surface is still wet is not in anybody's hand: it is not asked for yet. */
export const waitsForWet = (step: Step, world: World): boolean =>
  wipedItems(withoutOutOfUse(step, world)).some((id) => {
    const clock = world.clocks[id];
    return clock ? clock.state !== "ready" : world.station.items[id]?.condition !== "clean";
  });

function problemOf(
  input: Labels,
  left: readonly Step[],
  behind: readonly Step[],
  gloves: "soiled" | "clean",
  clocks: World["clocks"],
  how: Punctual = punctual,
): TurnaroundProblem {
  const { steps, before } = ordersOf(input.protocol);
  const written = new Map(steps.map((s, at) => [s.id, at]));
  const addedAt = (placeForAdded(steps) ?? steps.length) - 0.5;
  const pieces = (list: readonly Step[]): Piece[] =>
    list.map((step, i) => ({ step, at: written.get(step.id) ?? (isAdded(step.id) ? addedAt + i / 1_000 : 0) }));
  const changes = new Set(changesIn(left, gloves));
  const changesAt = pieces(left).flatMap(({ step, at }) => (changes.has(step) ? [at] : []));
  const ahead = pieces(left.filter((s) => !changes.has(s))).sort((a, b) => a.at - b.at);
  const past = pieces(behind);
  const label = (item: string): Label | undefined => {
    const product = productFor(input.protocol, item);
    return product === null ? undefined : labelOf({ input }, product);
  };
  const lost = past.filter(({ step }) => wetItems(step).some((id) => isLost(clocks[id], reapplySec(step))));
  const owing = past.filter((p) => !lost.includes(p) && wetItems(p.step).some((id) => owes(clocks[id])));
  const again = [
    ...lost,
    ...owing.toSorted((a, b) => wetForSec(a.step, clocks) - wetForSec(b.step, clocks)).slice(0, how.givenUp),
  ];
  const done = past.filter((p) => !again.includes(p) && wetItems(p.step).some((id) => isRunning(clocks[id])));
  const waits = [...again, ...done, ...ahead];
  const tasks = [...done, ...again, ...ahead].map((piece): Task => {
    const { step, at } = piece;
    const isAhead = ahead.includes(piece);
    const after: After[] = waits.flatMap((other): After[] => {
      if (other === piece) return [];
      const contact = isAhead ? contactBetween(other.step, step, label) : 0;
      const ordered = isAhead && ahead.includes(other) && keepsBefore(before, other.at, at, changesAt);
      return contact > 0 || ordered ? [{ task: other.step.id, minWaitSec: contact }] : [];
    });
    const wet = wetOf(step, label, done.includes(piece) ? wettedAgoSec(step, clocks) : 0, how.slackSec);
    const airs = wetItems(step).filter((id) => label(id)?.afterwards === "airDry");
    const tailSec = Math.max(0, ...airs.map((id) => label(id)?.contactSec ?? 0));
    return {
      id: step.id,
      label: step.show.en,
      handsOnSec: isAhead ? step.handsOnSec : reapplySec(step),
      cleanliness: glovesOf(step),
      after,
      ...(tailSec > 0 ? { tailSec } : {}),
      ...(wet ? { wet } : {}),
    };
  });
  return {
    tasks,
    gloveChangeSec: gloveChangeSec(input.protocol.breakdown),
    gloves,
    ...(done.length > 0 ? { soFar: { done: done.map(({ step }) => pastOf(step, clocks)) } } : {}),
  };
}

/** Directly by a rule, or through a change of gloves that stands between them. What was added keeps its place. */
const keepsBefore = (
  before: readonly ReadonlySet<number>[],
  a: number,
  b: number,
  changesAt: readonly number[],
): boolean => {
  if (a >= b) return false;
  if (!Number.isInteger(a) || !Number.isInteger(b)) return true;
  return before[b]?.has(a) === true || changesAt.some((at) => a < at && at < b);
};

const wetItems = (step: Pick<Step, "effects">): string[] =>
  step.effects.flatMap((e) => (e.verb === "apply" ? [e.item] : []));
const wipedItems = (step: Step): string[] =>
  step.effects.flatMap((e) => (e.verb === "wipe" || e.verb === "rinse" ? [e.item] : []));

/** Label contact time that has to pass between wetting here and wiping there, seconds. */
function contactBetween(a: Step, b: Step, label: (item: string) => Label | undefined): number {
  const wiped = new Set(wipedItems(b));
  return Math.max(0, ...wetItems(a).map((id) => (wiped.has(id) ? (label(id)?.contactSec ?? 0) : 0)));
}

/** Longest contact time of what the step of this id wets, seconds. */
const wetSecOf = ({ protocol, labels }: Labels, id: string): number =>
  Math.max(
    0,
    ...wetItems([...protocol.breakdown, ...protocol.setUp].find((s) => s.id === id) ?? noStep).map((item) => {
      const product = productFor(protocol, item);
      return product === null ? 0 : (labelOf({ input: { protocol, labels } }, product)?.contactSec ?? 0);
    }),
  );
const noStep: Pick<Step, "effects"> = { effects: [] };

/** The strictest of the labels on what the step wets. */
function wetOf(step: Step, label: (item: string) => Label | undefined, agoSec: number, slackSec: number): Task["wet"] {
  const labels = wetItems(step).flatMap((id) => label(id) ?? []);
  const windows = labels.flatMap((l) => (l.reapplyWithinSec === null ? [] : [l.reapplyWithinSec]));
  if (windows.length === 0) return undefined;
  return {
    contactSec: Math.max(...labels.map((l) => l.contactSec)),
    reapplyWithinSec: Math.max(withSlack(Math.min(...windows), step, slackSec), agoSec + reapplySec(step)),
    reapplySec: reapplySec(step),
  };
}

const withSlack = (sec: number, step: Step, slackSec: number): number => {
  const slowest = Math.max(step.handsOnSec, reapplySec(step));
  return sec - slackSec >= slowest ? sec - slackSec : sec;
};

/** Seconds until what the step wetted may be dry. */
const wetForSec = (step: Step, clocks: World["clocks"]): number =>
  Math.min(
    ...wetItems(step).flatMap((id) => {
      const clock = clocks[id];
      return clock && owes(clock) ? [((clock.reapplyWithinMs ?? 0) - clock.sinceAppliedMs) / 1000] : [];
    }),
  );

/** Has to be wetted once more before its time is full. */
const owes = (clock: WetClock | undefined): boolean =>
  clock !== undefined &&
  isRunning(clock) &&
  clock.reapplyWithinMs !== null &&
  clock.reapplyWithinMs - clock.sinceAppliedMs < leftMs(clock);

/** Wetting again takes the share of the step's seconds that the wetting has in it. */
export function reapplySec(step: Step): number {
  const share = wetItems(step).length / Math.max(1, workIn(step.effects));
  return Math.max(1, Math.ceil(step.handsOnSec * share));
}

/**
 * Dry, or dry before it can be wetted again: it counts from zero. Where it has been asked for, somebody is at it, and it
 * is not given up before it lapses.
 */
function isLost(clock: WetClock | undefined, wettingSec: number): boolean {
  if (clock?.state === "dry") return true;
  if (!clock || clock.reapplyWithinMs === null || !isRunning(clock)) return false;
  const wetForMs = clock.reapplyWithinMs - clock.sinceAppliedMs;
  if (wetForMs >= leftMs(clock)) return false;
  return !isAsked(clock) && wetForMs < wettingSec * 1000;
}

const isAsked = (clock: WetClock): boolean => clock.reapplyAsked || clock.reapplyPlanned === true;

const isRunning = (clock: WetClock | undefined): boolean => clock?.state === "counting" || clock?.state === "doubtful";

/** Credited seconds, rounded down: uncertainty costs time. Of several surfaces, the one that is furthest behind. */
function pastOf(step: Step, clocks: World["clocks"]): DoneTask {
  const running = wetItems(step).flatMap((id) => {
    const clock = clocks[id];
    return clock && isRunning(clock) ? [clock] : [];
  });
  const sec = (ms: number) => Math.floor(ms / 1000);
  return {
    task: step.id,
    agoSec: Math.min(...running.map((c) => sec(c.creditedMs))),
    wettedAgoSec: wettedAgoSec(step, clocks),
  };
}

/** Since the product was last put on, rounded up; of several surfaces, the longest. */
const wettedAgoSec = (step: Step, clocks: World["clocks"]): number =>
  Math.max(
    0,
    ...wetItems(step).flatMap((id) => {
      const clock = clocks[id];
      return clock && isRunning(clock) ? [Math.ceil(clock.sinceAppliedMs / 1000)] : [];
    }),
  );

/** Steps of whole glove changes that the planner's own setups stand for; others stay tasks. */
function changesIn(left: readonly Step[], gloves: "soiled" | "clean"): Step[] {
  let isSoiled = gloves === "soiled";
  return runsOfHands(left).flatMap(({ steps, before, after }) => {
    isSoiled = isSoiled || before.some((s) => glovesOf(s) === "soiled");
    const isImplied = isChange(steps) && isSoiled && after.some((s) => glovesOf(s) === "clean");
    if (isChange(steps)) isSoiled = false;
    return isImplied ? steps : [];
  });
}

/** The longest whole glove change of the list, hand hygiene with its dry time included; seconds. */
export const gloveChangeSec = (steps: readonly Step[]): number =>
  Math.max(
    0,
    ...runsOfHands(steps).map((run) => (isChange(run.steps) ? run.steps.reduce((sum, s) => sum + s.handsOnSec, 0) : 0)),
  );
