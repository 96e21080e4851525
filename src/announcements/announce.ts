/**
 * From what was just kept to what is said about it. Pure: the sentences are in the phrasebook, when they sound is the
 * announcing chart's business. What is not kept is said as "not kept", every time.
 */

import { isOffered } from "../../machines/session/answers";
import type { SessionState } from "../../machines/session/decide";
import { mayTouch } from "../../machines/session/mayTouch";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { isAdded } from "../session/addedSteps";
import type { DiscrepancyReason, FactOf, SessionFact } from "../session/fact";
import type { Moment } from "../session/keeper";
import type { Step } from "../session/protocol";
import { isLeftAlone, isSoiledOutside, taggedOut, unready } from "../session/station";
import { leftMs } from "../session/wetClock";
import { indexHere, inUse, kindsIn, stepHere, stepsHere, type World } from "../session/world";
import { fill, itemPart, listOf, sentences } from "./fill";
import { optionsNow } from "./options";
import type { Phrasebook, UndoWhat } from "./phrasebook";
import { type ClockLeft, type Spoken, sayClock, sayHowLong, sayWipedEarly } from "./sayClock";
import {
  sayBegun,
  sayClosed,
  sayCountsAs,
  sayDeviation,
  sayDeviations,
  sayEarBack,
  sayEarTrouble,
  sayEvent,
  sayExposure,
  sayHoldUp,
  sayItemNoted,
  sayKept,
  sayMayNotTouch,
  sayMayTouch,
  sayNotKept,
  sayOptions,
  sayRefused,
} from "./sayNotice";
import { withReady } from "./sayPlan";
import {
  askClose,
  askDiscrepancy,
  askExposureChoice,
  askExposureEnd,
  askItem,
  askItems,
  askLot,
  askOutOfUse,
  askRecount,
  askSharps,
  askSkipReason,
  askUndo,
  sayFirstAid,
} from "./sayQuestion";
import { sayPhase, sayStep, sayWhatLeft, sayWhatNow } from "./sayStep";
import { together } from "./together";
import type { Part, Utterance } from "./utterance";

/** Deviations that another sentence of the same moment already tells. */
const toldElsewhere: ReadonlySet<string> = new Set([
  "wipedEarly",
  "stepLeftOut",
  "problemReported",
  "gloveTorn",
  "sharpsMismatch",
]);

/** @param readyInMs until the station is ready, by the plan; null where there is none */
export function announce(book: Phrasebook, moment: Moment, readyInMs: number | null = null): readonly Utterance[] {
  if (!moment.kept) return [sayNotKept(book, moment.trouble.code === "storage-full" ? "storageFull" : "writeFailed")];
  const { facts, after, event } = moment;
  const stated = facts.flatMap((fact) => sayFact(book, moment, fact));
  const asked = asksAnew(moment) ? question(book, after) : [];
  const end = facts.some((f) => f.type === "v1.StepDone" || f.type === "v1.StepSkipped") ? atTheEnd(book, after) : [];
  const isRefused = facts.some((fact) => fact.type === "v1.Refused");
  const answered = [...answer(book, after, event, readyInMs, isRefused), ...touchAllowed(book, moment)];
  const all = [...stated, ...asked, ...answered, ...stillWaiting(book, moment), ...declined(book, moment), ...end];
  return together(
    book,
    all.filter((u, at) => u.key !== "step" || all.findIndex((v) => v.key === "step") === at),
  );
}

/** No step is left and the work is not going on: what closes the session, or what the beginning waits for. */
function atTheEnd(book: Phrasebook, state: SessionState): readonly Utterance[] {
  const { input, world } = state.context;
  if (stepHere(input, world) || world.flows.length > 0 || world.exposure === "firstAid") return [];
  if (world.phase !== "breakdown" || !state.matches({ conversation: "open" })) return [];
  return [{ key: "step", parts: fill(book.answer.toClose), urgency: "soon", solicited: true }];
}

/** What is said first when a session is opened again: where we are, and what nobody watched. */
export function announceReopened(book: Phrasebook, state: SessionState): readonly Utterance[] {
  return [...waiting(book, state.context.world, state), ...here(book, state)];
}

function sayFact(book: Phrasebook, { after, before, facts }: Kept, fact: SessionFact): readonly Utterance[] {
  const { input, world } = after.context;
  const item = (id: string | null): Spoken | null => (id === null ? null : spoken(after, id));
  switch (fact.type) {
    case "v1.SessionBegan":
      return [
        sayBegun(
          book,
          input.carriedOver.map((id) => spoken(after, id)),
        ),
      ];
    case "v1.PhaseEntered":
      return [sayPhase(book, fact.phase)];
    case "v1.StepEntered":
      return here(book, after);
    case "v1.StepSkipped":
      return [sayKept(book, "leftOut")];
    case "v1.ProblemReported":
      return isOffered(after.context) ? [sayKept(book, "problem"), askOutOfUse(book)] : [sayKept(book, "problem")];
    case "v1.ItemOutOfUse":
      return [sayCountsAs(book, "outOfUse", spoken(after, fact.item))];
    case "v1.ItemBackInUse":
      return [sayCountsAs(book, "itemSoiled", spoken(after, fact.item))];
    case "v1.Refused":
      return fact.reason === "answerFirst"
        ? openQuestion(book, after)
        : [(fact.request === "may.touch" ? sayMayNotTouch : sayRefused)(book, fact.reason, item(fact.item))];
    case "v1.Deviation":
      return toldElsewhere.has(fact.code) ? [] : sayFinding(book, after, facts, fact);
    case "v1.ReapplyDue":
      return [sayClock(book, "reapplyDue", [spoken(after, fact.surface)])];
    case "v1.ReapplyPlanned":
      // The next thing to do by the plan, as a step would be: no interruption.
      return [{ ...sayClock(book, "reapplyDue", [spoken(after, fact.surface)]), solicited: true }];
    case "v1.WetClockLapsed":
      return [sayClock(book, "lapsed", [spoken(after, fact.surface)])];
    case "v1.WetClockTimeUp":
      return [sayClock(book, "timeUp", [spoken(after, fact.surface)])];
    case "v1.WetClockReady":
      return [sayClock(book, "ready", [spoken(after, fact.surface)]), ...wipeNow(book, after, fact.surface)];
    case "v1.WetClockDried":
      return [sayClock(book, "dried", [spoken(after, fact.surface)])];
    case "v1.WipedEarly":
      return [sayWipedEarly(book, fact.shortByMs, Object.keys(world.clocks).length > 1 ? item(fact.surface) : null)];
    case "v1.GapSeen":
      return waiting(book, world, after).filter((u) => u.merge === "stillWet");
    case "v1.EventReported":
      return fact.item === null ? [sayEvent(book, fact.event)] : [sayItemNoted(book, spoken(after, fact.item))];
    case "v1.LotGiven":
      return [sayKept(book, "lot")];
    case "v1.NoteKept":
      return [sayKept(book, "note")];
    // Read back by the question that follows; one past its day by its refusal.
    case "v1.LotShown":
      return [];
    case "v1.SharpsCounted":
      return fact.inContainer === fact.expected ? [sayKept(book, "count")] : [];
    case "v1.RecountAsked":
      return [askRecount(book, world.sharps.opened)];
    case "v1.ExposureReported":
      return [sayFirstAid(book)];
    case "v1.ExposureAnswered":
      return fact.choice === "resume" ? [sayExposure(book, "resuming")] : [];
    case "v1.ExposureEnded":
      return [sayExposure(book, fact.outcome)];
    case "v1.Paused":
      return [sayKept(book, "paused")];
    case "v1.Resumed":
      return [sayKept(book, "resumed")];
    case "v1.BriskSet":
      return [sayKept(book, fact.on ? "briskOn" : "briskOff")];
    case "v1.Undone":
      return [
        sayKept(book, "undone"),
        ...(stepHere(input, world) || before.context.world.flows.length > 0 ? [] : here(book, after)),
      ];
    case "v1.EarLost":
      return [sayEarTrouble(book, "lost")];
    case "v1.EarBack":
      return [sayEarBack(book)];
    case "v1.SessionClosed":
      return [
        sayClosed(
          book,
          fact.balanced,
          fact.unready.map((id) => spoken(after, id)),
        ),
      ];
    case "v1.WetClockStarted":
    case "v1.WetClockReapplied":
    case "v1.WetClockTrusted":
    case "v1.SurfaceWiped":
    case "v1.StepDone":
    case "v1.PlanChosen":
    case "v1.FlowEnded":
    case "v1.SharpsDiscrepancy":
    case "v1.DayTurned":
    case "v1.TimeWitnessed":
      return [];
  }
}

/** Each finding once: what one moment finds on several things is said in one sentence, at the place of the first. */
function sayFinding(
  book: Phrasebook,
  after: SessionState,
  facts: readonly SessionFact[],
  fact: FactOf<"v1.Deviation">,
): readonly Utterance[] {
  const alike = facts.filter((f) => f.type === "v1.Deviation" && f.code === fact.code) as FactOf<"v1.Deviation">[];
  if (alike[0] !== fact) return [];
  const ids = [...new Set(alike.flatMap((f) => f.item ?? []))];
  // Touched with clean gloves, a clean thing is clean still; that it was noted is said anyway.
  const isNothing = (id: string): boolean => {
    const item = after.context.world.station.items[id];
    return fact.code === "touchedUnplanned" && item !== undefined && !isSoiledOutside(item);
  };
  const told = ids.filter((id) => !isNothing(id));
  if (told.length === 0 && ids.length > 0) return [];
  return [
    sayDeviations(
      book,
      fact.code,
      told.map((id) => spoken(after, id)),
    ),
  ];
}

type Kept = Extract<Moment, { kept: true }>;

function spoken(state: SessionState, id: string): Spoken {
  const { input } = state.context;
  const item = kindsIn(input)[id];
  if (item) return item;
  const product = input.labels[id] ?? input.protocol.products.find((p) => p.id === id)?.label;
  return { id, calledAs: product?.name ?? { en: id } };
}

/** The step to be done now. A wipe that may not begin yet is not asked for: what it waits for is said instead. */
function here(book: Phrasebook, state: SessionState): readonly Utterance[] {
  const { input, world } = state.context;
  const { place } = world;
  const step = stepHere(input, world);
  if (!step) return [];
  if (step.kind === "count") return [askSharps(book, world.sharps.opened, world.sharps.opened)];
  const wipes = step.effects.flatMap((e) =>
    e.verb === "wipe" && !isLeftAlone(world.station.items[e.item], e) ? [e.item] : [],
  );
  const waitsFor = wipes.flatMap((id) => waitsOn(book, state, id));
  const counting = Object.values(world.clocks).filter((c) => wipes.includes(c.surface) && c.state === "counting");
  const left = counting.map((c) => ({ item: spoken(state, c.surface), leftMs: Math.max(1, leftMs(c)) }));
  const waits = left.length > 0 ? [...waitsFor, longestLeft(book, left)] : waitsFor;
  if (waits.length > 0) return waits;
  const group =
    world.flows.length > 0 || !place ? [step] : stepsHere(input, world).slice(place.index, place.index + place.group);
  const said = sayStep(book, group, world.brisk ? "brisk" : "careful");
  return [isAdded(step.id) ? { ...said, parts: sentences(said.parts, itemsOfStep(book, state, step)) } : said];
}

/** An added step is written without the things it is about. */
function itemsOfStep(book: Phrasebook, state: SessionState, step: Step): readonly Part[] {
  const ids = [...new Set(step.effects.flatMap((e) => ("item" in e ? [e.item] : [])))];
  if (ids.length === 0) return [];
  return [
    ...listOf(
      book,
      ids.map((id) => itemPart(book, spoken(state, id))),
    ),
    { kind: "fixed", text: "." },
  ];
}

/** The one that keeps the wipe waiting longest stands for all. */
const longestLeft = (book: Phrasebook, left: readonly ClockLeft[]): Utterance =>
  sayHowLong(book, left.toSorted((a, b) => b.leftMs - a.leftMs).slice(0, 1));

function waitsOn(book: Phrasebook, state: SessionState, id: string): readonly Utterance[] {
  const { world } = state.context;
  const clock = world.clocks[id];
  const item = spoken(state, id);
  if (!clock) return world.station.items[id]?.condition === "clean" ? [] : [sayDeviation(book, "neverWet", item)];
  switch (clock.state) {
    case "ready":
      return [];
    // Said for all of them at once, by `here`.
    case "counting":
      return [];
    case "timeUp":
      return [{ ...sayClock(book, "timeUp", [item]), urgency: "soon", solicited: true }];
    case "doubtful":
      return [sayClock(book, "stillWet", [item])];
    case "dry":
      return [sayClock(book, "dried", [item])];
  }
}

/** A surface came ready while its wipe is the step that was waiting. */
function wipeNow(book: Phrasebook, state: SessionState, surface: string): readonly Utterance[] {
  const { input, world } = state.context;
  const step = stepHere(input, world);
  return step?.effects.some((e) => e.verb === "wipe" && e.item === surface) ? here(book, state) : [];
}

/** The questions about wetness that stand open. */
function waiting(book: Phrasebook, world: World, state: SessionState): readonly Utterance[] {
  const in_ = (wanted: string) =>
    Object.values(world.clocks)
      .filter((c) => c.state === wanted)
      .map((c) => spoken(state, c.surface));
  const doubtful = in_("doubtful");
  const full = in_("timeUp");
  return [
    ...(doubtful.length > 0 ? [sayClock(book, "stillWet", doubtful)] : []),
    ...(full.length > 0 ? [sayClock(book, "timeUp", full)] : []),
  ];
}

/** After a yes or a no, what is still open is asked again, so that no surface waits unheard. */
function stillWaiting(book: Phrasebook, { facts, after }: Kept): readonly Utterance[] {
  const answered = facts.some(
    (f) => f.type === "v1.WetClockReady" || f.type === "v1.WetClockDried" || f.type === "v1.WetClockTrusted",
  );
  return answered ? waiting(book, after.context.world, after) : [];
}

/** A no to what was offered changes nothing; the step that it was asked at is said again, so that the no is not met in silence. */
function declined(book: Phrasebook, { before, after, event, facts }: Kept): readonly Utterance[] {
  const isNo = event.type === "answer.no" && facts.length === 0;
  return isNo && isOffered(before.context) && !isOffered(after.context) ? now(book, after) : [];
}

/** A question of the conversation stands that did not stand so before. */
function asksAnew({ before, after, event, facts }: Kept): boolean {
  if (after.matches({ conversation: "open" }) || after.matches({ conversation: { readBack: "sharps" } })) return false;
  if (facts.some((f) => f.type === "v1.Refused" && f.reason === "answerFirst")) return false;
  if (facts.some((f) => f.type === "v1.LotShown")) return true;
  const moved = JSON.stringify(before.value) !== JSON.stringify(after.value);
  return moved || before.context.naming?.at !== after.context.naming?.at || event.type === "step.again";
}

function openQuestion(book: Phrasebook, state: SessionState): readonly Utterance[] {
  const asked = question(book, state);
  if (asked.length > 0) return asked;
  const { world } = state.context;
  if (world.exposure === "firstAid") return [askExposureChoice(book)];
  return waiting(book, world, state).map((u) => ({ ...u, urgency: "soon", solicited: true }));
}

function question(book: Phrasebook, state: SessionState): readonly Utterance[] {
  const { world, naming } = state.context;
  if (state.matches({ conversation: "reason" })) return [askSkipReason(book)];
  if (state.matches({ conversation: "naming" }) && naming) {
    const name = naming.candidates[naming.at];
    if (naming.about === "discrepancy")
      return [askDiscrepancy(book, (name ?? "unexplained") as DiscrepancyReason, naming.at === 0)];
    const group = naming.groups?.[naming.at];
    if (group)
      return [
        askItems(
          book,
          group.map((id) => spoken(state, id)),
          naming.at === 0,
        ),
      ];
    return [askItem(book, name === undefined ? null : spoken(state, name), naming.at === 0)];
  }
  if (state.matches({ conversation: { readBack: "sharps" } })) {
    return [
      world.sharps.recounts > 0
        ? askRecount(book, world.sharps.opened)
        : askSharps(book, world.sharps.opened, world.sharps.opened),
    ];
  }
  if (state.matches({ conversation: { readBack: "close" } })) {
    const balanced =
      world.sharps.discrepancy === null && (world.sharps.opened === 0 || world.sharps.counted === "balanced");
    return [
      askClose(book, {
        balanced,
        sharpsOpened: world.sharps.opened,
        deviations: world.deviations.length,
        stepsLeftOut: world.skipped.length,
      }),
    ];
  }
  if (state.matches({ conversation: { readBack: "lot" } }) && world.lotShown) {
    const { item, lot, expiry } = world.lotShown;
    return [askLot(book, spoken(state, item), lot, expiry)];
  }
  if (state.matches({ conversation: { readBack: "undo" } })) return [askUndo(book, undoWhat(world))];
  if (state.matches({ conversation: { readBack: "exposureEnd" } })) return [askExposureEnd(book)];
  return [];
}

function undoWhat(world: World): UndoWhat {
  const then = world.before;
  if (!then) return "lastReport";
  if (world.flows.length > then.flows.length) return "event";
  if (world.skipped.length > then.skipped.length) return "stepSkipped";
  if (world.done.length > then.done.length) return "stepDone";
  return "lastReport";
}

/** The step, or what there is instead of one. */
function now(book: Phrasebook, state: SessionState): readonly Utterance[] {
  const { input, world } = state.context;
  if (world.exposure === "firstAid") return [sayFirstAid(book)];
  if (stepHere(input, world)) return here(book, state);
  const end = atTheEnd(book, state);
  if (end.length > 0) return end;
  return world.phase === "procedure" ? [sayWhatNow(book, [], "careful")] : [sayRefused(book, "wetClockRuns", null)];
}

export const outOfUseNow = (state: SessionState): readonly Spoken[] =>
  taggedOut(state.context.world.station).map((id) => spoken(state, id));

/** Questions the artist asks; nothing changes, so nothing is kept. */
function answer(
  book: Phrasebook,
  state: SessionState,
  event: SessionEvent,
  readyInMs: number | null,
  isRefused: boolean,
): readonly Utterance[] {
  const { input, world } = state.context;
  switch (event.type) {
    case "step.again": {
      const open = openQuestion(book, state);
      if (!state.matches({ conversation: "open" }))
        return state.matches({ conversation: { readBack: "sharps" } }) ? open : [];
      if (world.exposure === "firstAid") return [sayFirstAid(book)];
      return [...now(book, state), ...open];
    }
    case "ask.howLong": {
      const wet = Object.values(world.clocks).filter((c) => c.state !== "ready");
      const left = wet.map((c) => ({ item: spoken(state, c.surface), leftMs: leftMs(c) }));
      return [withReady(book, readyInMs, sayHowLong(book, left), left.length > 0, outOfUseNow(state))];
    }
    case "ask.options":
      return [sayOptions(book, optionsNow(state))];
    case "code.wanted":
      return isRefused ? [] : [sayHoldUp(book)];
    case "ask.whatNow":
      return [
        sayWhatNow(
          book,
          [stepHere(input, world)].filter((s) => s !== null),
          world.brisk ? "brisk" : "careful",
        ),
      ];
    case "ask.whatLeft":
      return [
        sayWhatLeft(book, {
          steps: stepsHere(input, world).length - Math.min(indexHere(world), stepsHere(input, world).length),
          notReady: notReady(state).map((id) => spoken(state, id)),
          outOfUse: outOfUseNow(state),
          sharpsOut: inUse(world.sharps),
        }),
      ];
    default:
      return [];
  }
}

/** "May I touch the lamp?" A yes leaves no fact; a no is said by its own. */
function touchAllowed(book: Phrasebook, { before, after, event, facts }: Kept): readonly Utterance[] {
  if (facts.length > 0 || !after.matches({ conversation: "open" })) return [];
  const { naming } = before.context;
  const named = naming?.about === "mayTouch" && event.type === "answer.yes" ? naming.candidates[naming.at] : undefined;
  const item = event.type === "may.touch" ? event.item : named;
  if (item === undefined) return [];
  const answer = mayTouch(after.context, item);
  return answer.may ? [sayMayTouch(book, answer.because, spoken(after, item))] : [];
}

/** In the breakdown, all that would not be ready if it closed now; before it, what is soiled already. */
function notReady({ context: { input, world } }: SessionState): readonly string[] {
  const kinds = kindsIn(input);
  if (world.phase === "breakdown") {
    const isOut = (id: string): boolean => world.station.items[id]?.at === "taggedOut";
    return [...new Set([...unready(world.station, kinds), ...Object.keys(world.clocks)])].filter((id) => !isOut(id));
  }
  return unready(world.station, kinds).filter(
    (id) =>
      world.station.items[id]?.at !== "taggedOut" &&
      kinds[id]?.use === "reusable" &&
      world.station.items[id]?.condition === "soiled",
  );
}

/** What a spoken utterance asks, so that the session knows what a yes or a spray then answers; null where it asks nothing. */
export function askedBy(utterance: Utterance): Extract<SessionEvent, { type: "question.asked" }> | null {
  const about = {
    timeUp: "stayedWet",
    stillWet: "stillWet",
    reapplyDue: "reapply",
    lapsed: "wetAgain",
    dried: "wetAgain",
    ready: null,
  } as const;
  const asks = utterance.merge === undefined ? null : about[utterance.merge];
  if (asks === null) return null;
  const surfaces = utterance.parts.flatMap((p) => (p.kind === "item" ? [p.id] : []));
  return { type: "question.asked", about: asks, surfaces };
}

export type Cue = "heard" | "clockStarted" | "timeUp" | "refused" | "alarm";

/** The earcon of a moment; the clock's start is never spoken. */
export function cueFor(facts: readonly SessionFact[]): Cue | null {
  if (facts.some((f) => f.type === "v1.ExposureReported")) return "alarm";
  if (facts.some((f) => f.type === "v1.Refused")) return "refused";
  if (facts.some((f) => f.type === "v1.WetClockTimeUp")) return "timeUp";
  if (facts.some((f) => f.type === "v1.WetClockStarted" || f.type === "v1.WetClockReapplied")) return "clockStarted";
  return null;
}
