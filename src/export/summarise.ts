/** Adds a session up: one pass over its facts, with the same fold that the session itself stood on. */
import type { LogEntry, Summary } from "../log";
import type { FactOf, SessionFact } from "../session/fact";
import { credit, fold } from "../session/fold";
import type { SessionInput } from "../session/sessionInput";
import { taggedOut } from "../session/station";
import { stepIn, type World, worldAtStart } from "../session/world";
import { type ClockRun, clockRuns, noRuns } from "./clockRuns";
import { type Remedy, remedyIn } from "./remedies";

type Tally = {
  hands: Summary["hands"];
  waste: Summary["waste"];
  lots: Summary["lots"];
  runs: readonly ClockRun[];
};

type Taken = { n: number; cause: number; takenBack: boolean };
type Noted = {
  phases: Summary["phases"];
  counts: Summary["sharps"]["counts"];
  deviations: (Summary["deviations"][number] & Taken & { done: Remedy | null; doneCause: number })[];
  skipped: (Summary["skipped"][number] & Taken)[];
  events: (Summary["events"][number] & Taken)[];
  refused: Summary["refused"];
  exposures: Summary["exposures"];
  gaps: Summary["gaps"];
  notes: NonNullable<Summary["notes"]>;
  known: Summary["known"];
  takenBack: number;
};

/** @param entries In order. Pure: the same entries always come to the same summary. */
export function summarise(input: SessionInput, entries: readonly LogEntry[], rules?: string): Summary {
  const sum = summing(input);
  let before = worldAtStart(input, rules);
  for (const entry of entries) {
    const after = fold(input, before, entry.fact);
    sum.take({ entry, before, credited: credit(before, entry.fact.witnessedMs), after });
    before = after;
  }
  return sum.summary();
}

export type Summing = {
  take(step: { entry: LogEntry; before: World; credited: World; after: World }): void;
  summary(): Summary;
};

/** The same step by step, for who folds already. */
export function summing(input: SessionInput): Summing {
  const noted: Noted = {
    phases: [],
    counts: [],
    deviations: [],
    skipped: [],
    events: [],
    refused: [],
    exposures: [],
    gaps: [],
    notes: [],
    known: { measured: 0, scanned: 0, said: 0 },
    takenBack: 0,
  };
  let tally = tallyAtStart(input);
  let tallyBefore = tally;
  let last = worldAtStart(input);
  let close: FactOf<"v1.SessionClosed"> | null = null;
  return {
    take({ entry, before, credited, after }) {
      const { fact, n } = entry;
      // What one undo gives back is what the fold gives back.
      if (after.before !== null && after.beforeCause !== before.beforeCause) tallyBefore = tally;
      const seen = { n, fact, credited, before, after };
      if (fact.type === "v1.Undone") {
        takeBack(noted, fact.fromCause);
        tally = { ...tallyBefore, runs: clockRuns({ ...seen, runs: tally.runs, given: tallyBefore.runs }) };
      } else {
        const runs = clockRuns({ ...seen, runs: tally.runs, given: null });
        const next = tallied(input, tally, seen);
        tally = next.runs === runs ? next : { ...next, runs };
      }
      if (noted.deviations.length > 0 && fact.type !== "v1.Undone") putRight(noted, seen);
      note(noted, entry, before, after);
      if (fact.type === "v1.SessionClosed") close = fact;
      last = after;
    },
    summary: () => written(noted, tally, last, close),
  };
}

const tallyAtStart = (input: SessionInput): Tally => ({
  hands: { washed: 0, rubbed: 0, glovesOn: 0, glovesOff: 0 },
  waste: { sharps: 0, contaminated: 0, general: 0, reprocess: 0 },
  lots: input.lots.map((lot) => ({ n: null, ...lot })),
  runs: noRuns,
});

function tallied(
  input: SessionInput,
  tally: Tally,
  { n, fact, before, after }: { n: number; fact: SessionFact; before: World; after: World },
): Tally {
  if (fact.type === "v1.LotGiven") {
    const { item, lot, expiry } = fact;
    const { lotShown } = before;
    const isScanned = lotShown?.item === item && lotShown.lot === lot && lotShown.expiry === expiry;
    return { ...tally, lots: [...tally.lots, { n, item, lot, expiry, known: isScanned ? "scanned" : "said" }] };
  }
  // A step of a phase that is answered again does nothing again (see fold).
  if (fact.type !== "v1.StepDone" || before.station === after.station) return tally;
  const hands = { ...tally.hands };
  const waste = { ...tally.waste, sharps: after.sharps.binned };
  for (const effect of stepIn(input, before, fact.step)?.effects ?? []) {
    if (effect.verb === "wash") hands.washed++;
    if (effect.verb === "rub") hands.rubbed++;
    if (effect.verb === "don") hands.glovesOn++;
    if (effect.verb === "doff") hands.glovesOff++;
    if (effect.verb === "discard" && effect.into !== "sharps") waste[effect.into]++;
  }
  return { ...tally, hands, waste };
}

function takeBack(noted: Noted, fromCause: number): void {
  noted.takenBack++;
  for (const one of [...noted.deviations, ...noted.skipped, ...noted.events]) {
    if (one.cause >= fromCause) one.takenBack = true;
  }
  for (const one of noted.deviations) if (one.doneCause >= fromCause) one.done = null;
}

/** The first remedy counts; one that is taken back leaves room for another. */
function putRight(noted: Noted, seen: { n: number; fact: SessionFact; before: World; after: World }): void {
  for (const one of noted.deviations) {
    if (one.done !== null || one.takenBack) continue;
    one.done = remedyIn(one, seen);
    one.doneCause = seen.fact.cause;
  }
}

function note(noted: Noted, { n, fact, at, known }: LogEntry, before: World, after: World): void {
  noted.known[known]++;
  const { cause } = fact;
  const last = noted.phases.at(-1);
  if (last && before.phase !== "closed") {
    last.to = at;
    last.watchedMs += after.witnessedMs - before.witnessedMs;
  }
  switch (fact.type) {
    case "v1.PhaseEntered":
      noted.phases.push({ phase: fact.phase, from: at, to: at, watchedMs: 0 });
      break;
    case "v1.SharpsCounted":
      noted.counts.push({ n, expected: fact.expected, inContainer: fact.inContainer });
      break;
    case "v1.Deviation":
      noted.deviations.push({
        n,
        code: fact.code,
        item: fact.item,
        step: fact.step,
        takenBack: false,
        cause,
        done: null,
        doneCause: -1,
      });
      break;
    case "v1.StepSkipped":
      noted.skipped.push({ n, step: fact.step, reason: fact.reason, takenBack: false, cause });
      break;
    case "v1.EventReported":
      noted.events.push({ n, event: fact.event, item: fact.item, takenBack: false, cause });
      break;
    case "v1.Refused":
      noted.refused.push({ n, request: fact.request, reason: fact.reason, item: fact.item });
      break;
    case "v1.ExposureReported":
      noted.exposures.push({ n, outcome: "open" });
      break;
    case "v1.ExposureEnded":
      noted.exposures = noted.exposures.map((e) => (e.outcome === "open" ? { ...e, outcome: fact.outcome } : e));
      break;
    case "v1.GapSeen":
      noted.gaps.push({ n, why: fact.why });
      break;
    case "v1.NoteKept":
      noted.notes.push({ n, lengthMs: fact.lengthMs });
      break;
  }
}

function written(noted: Noted, tally: Tally, world: World, close: FactOf<"v1.SessionClosed"> | null): Summary {
  const { known, refused, exposures, gaps, notes, phases, counts, takenBack } = noted;
  const ended = world.exposure === "ended" ? "endedByExposure" : "closed";
  return {
    outcome: close ? ended : "unfinished",
    closed: close ? { balanced: close.balanced, unready: close.unready } : null,
    phases,
    wetClocks: tally.runs.map(({ live: _live, ...run }) => run),
    hands: tally.hands,
    sharps: {
      opened: world.sharps.opened,
      inContainer: world.sharps.binned,
      parked: world.sharps.parked,
      counts,
      recounts: world.sharps.recounts,
      discrepancy: world.sharps.discrepancy,
    },
    lots: tally.lots,
    deviations: noted.deviations.map(({ doneCause: _doneCause, ...one }) => withoutCause(one)),
    skipped: noted.skipped.map(withoutCause),
    refused,
    events: noted.events.map(withoutCause),
    exposures,
    gaps,
    notes,
    waste: tally.waste,
    known,
    takenBack,
    outOfUse: taggedOut(world.station),
  };
}

const withoutCause = <T extends Taken>({ cause: _cause, ...rest }: T): Omit<T, "cause"> => rest;
