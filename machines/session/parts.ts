/** Guards and actions by name, each a line where it can be. The phases say when; `statements` and `answers` say what. */
import { assign, enqueueActions, raise, setup } from "xstate";
import type { BareFact, DiscrepancyReason, RefusalReason, SessionFact } from "../../src/session/fact";
import { credit, fold } from "../../src/session/fold";
import type { SessionInput } from "../../src/session/sessionInput";
import { canBeTaggedOut, unready } from "../../src/session/station";
import { owesReapply } from "../../src/session/wetClock";
import { flowHere, indexHere, kindsIn, stepHere, type World } from "../../src/session/world";
import { planIsSound } from "../../src/turnaround/breakdown/planIsSound";
import {
  type Asked,
  choicesIn,
  eventHappened,
  hasEffectHere,
  isOffered,
  looksSafer,
  mayHaveToGo,
  type Naming,
  named,
  namingOf,
  namingSprays,
  noTo,
  questioned,
  type Sprays,
  sprayed,
  spraysMeant,
  taggable,
  touchAsked,
  yesTo,
} from "./answers";
import { lotMeant } from "./lookUp";
import {
  codeShown,
  earlierEntered,
  hereEntered,
  notReadyToWipe,
  refusal,
  stepsDone,
  surfaceWiped,
  timePassed,
} from "./statements";
import type { Ms, SessionEvent } from "./vocabulary";

export interface SessionMemory {
  readonly input: SessionInput;
  readonly world: World;
  /** Watched since the last fact. */
  readonly pendingMs: Ms;
  readonly naming: Naming | null;
  /** The question about wetness that was asked aloud last. */
  readonly asked: Asked | null;
  /** Every question about spraying that was asked aloud, in order; those whose surfaces want none any more are void. */
  readonly askedSprays: Sprays;
  /** The step at which a problem was told, and it was asked whether something goes out of use; void at any other step. */
  readonly offered: string | null;
}

/** Within the chart: the walk goes on, a count is due, the session is closed, an exposure ends. */
type Inner = { type: "walk.on" | "count.due" | "finish.kept" | "close.kept" | "exposure.end" };

/** `cause` numbers the event; its facts share it. */
export type ToldEvent = SessionEvent & { readonly cause: number };
type Heard = ToldEvent | Inner;

const causeOf = (memory: SessionMemory, event: Heard): number => ("cause" in event ? event.cause : memory.world.cause);

/** Each action sees what the one before it stated: facts are stamped, folded, and emitted to be written. */
const state = (factsOf: (memory: SessionMemory, event: Heard) => readonly BareFact[]) =>
  enqueueActions<SessionMemory, Heard, undefined, Heard, never, never, never, never, SessionFact>(
    ({ context, event, enqueue }) => {
      let { world, pendingMs } = context;
      for (const bare of factsOf(context, event)) {
        const fact = { ...bare, witnessedMs: pendingMs, cause: causeOf(context, event) } as SessionFact;
        world = fold(context.input, world, fact);
        pendingMs = 0;
        enqueue.emit(fact);
      }
      enqueue.assign({ world, pendingMs });
    },
  );

const eventIs = <T extends SessionEvent["type"]>(event: Heard, type: T): Extract<ToldEvent, { type: T }> | null =>
  event.type === type ? (event as Extract<ToldEvent, { type: T }>) : null;

const refuse = (reason: RefusalReason, item: string | null = null) =>
  state((_memory, event) => [refusal(event.type, reason, item)]);

const surfaceIn = (event: Heard): string | undefined => ("surface" in event ? event.surface : undefined);

const closing = ({ input, world }: SessionMemory): BareFact[] => {
  const balanced = world.sharps.counted === "balanced" && world.sharps.discrepancy === null;
  const unsettled = world.sharps.opened > 0 && !balanced && world.sharps.discrepancy === null;
  const left = unready(world.station, kindsIn(input));
  const running = Object.keys(world.clocks);
  const facts: BareFact[] = unsettled ? [{ type: "v1.SharpsDiscrepancy", reason: "exposure" }] : [];
  return [
    ...facts,
    {
      type: "v1.SessionClosed",
      balanced: balanced || world.sharps.opened === 0,
      unready: [...new Set([...left, ...running])],
    },
  ];
};

/** Sharps opened are all in the container, or the difference has its reason. */
const sharpsSettled = ({ world }: SessionMemory): boolean =>
  world.sharps.opened === 0 || world.sharps.counted === "balanced" || world.sharps.discrepancy !== null;

const listIsOver = ({ input, world }: SessionMemory): boolean =>
  world.exposure !== "firstAid" &&
  world.place !== null &&
  world.place.list !== "resuming" &&
  flowHere(world) === null &&
  stepHere(input, world) === null;

export const session = setup({
  types: {
    context: {} as SessionMemory,
    events: {} as Heard,
    emitted: {} as SessionFact,
    input: {} as SessionMemory,
  },
  guards: {
    notBegun: ({ context }) => context.world.count === 0,
    hasStepHere: ({ context }) => stepHere(context.input, context.world) !== null,
    flowIsOver: ({ context }) =>
      context.world.exposure !== "firstAid" &&
      flowHere(context.world) !== null &&
      stepHere(context.input, context.world) === null,
    /** The last step of a flow after which the work does not go on: client unwell, stopped early. */
    flowStopsTheWork: ({ context: { input, world } }) =>
      flowHere(world) !== null &&
      stepHere(input, world) === null &&
      world.exposure === "none" &&
      input.protocol.events.find((f) => f.event === flowHere(world)?.event)?.onwards === "dressing",
    resumingIsOver: ({ context: { input, world } }) =>
      world.place?.list === "resuming" && flowHere(world) === null && stepHere(input, world) === null,
    listIsOver: ({ context }) => listIsOver(context),
    mayBeginWork: ({ context }) =>
      listIsOver(context) && Object.values(context.world.clocks).every((c) => c.state === "ready"),
    inFirstAid: ({ context }) => context.world.exposure === "firstAid",
    notInFirstAid: ({ context }) => context.world.exposure !== "firstAid",
    nothingToWalk: ({ context }) => stepHere(context.input, context.world) === null,
    nothingToGoBackTo: ({ context: { world } }) =>
      world.exposure === "firstAid" || (flowHere(world)?.index ?? world.place?.index ?? 0) === 0,
    /** The set-up is walked and only a wet surface kept the work from beginning. */
    awaitsBeginning: ({ context: { world } }) =>
      world.phase === "setUp" && world.place !== null && world.exposure === "none",
    mayFinish: ({ context: { world } }) =>
      world.phase === "procedure" && world.exposure === "none" && flowHere(world) === null && !world.paused,
    notInBreakdown: ({ context }) => context.world.phase !== "breakdown" || context.world.exposure === "firstAid",
    /** After an exposure the artist goes to a clinician; what is left undone is said and kept as such. */
    mayCloseUnfinished: ({ context }) => context.world.exposure === "ended",
    wetClockRuns: ({ context }) => Object.values(context.world.clocks).some((c) => c.state !== "ready"),
    sharpsOpenQuestion: ({ context }) => !sharpsSettled(context),
    isPaused: ({ context }) => context.world.paused,
    notSkippable: ({ context }) => stepHere(context.input, context.world)?.skippable === false,
    noWetClockRuns: ({ context }) => Object.values(context.world.clocks).every((c) => c.state === "ready"),
    recountedBefore: ({ context }) => context.world.sharps.recounts > 0,
    countBalances: ({ context, event }) =>
      eventIs(event, "sharps.counted")?.inContainer === context.world.sharps.opened,
    /** Its time is full but nobody said it stayed wet: ask, before a wipe ends it. */
    wetnessNotSaid: ({ context }) => notReadyToWipe(context).some((id) => context.world.clocks[id]?.state === "timeUp"),
    wipesEarly: ({ context }) => notReadyToWipe(context).length > 0,
    /** More than one thing could have been sprayed, or none that we know of. */
    sprayIsUnclear: ({ context, event }) =>
      surfaceIn(event) === undefined && spraysMeant(context, context.askedSprays).length !== 1,
    wipesHere: ({ context, event }) => surfaceIn(event) === undefined && hasEffectHere(context, "wipe"),
    knowsWhatWiped: ({ context, event }) =>
      surfaceIn(event) !== undefined || Object.keys(context.world.clocks).length === 1,
    isQuestioned: ({ context, event }) => questioned(context.world, context.asked, surfaceIn(event)).length > 0,
    needsItem: ({ context, event }) => {
      const told = eventIs(event, "event.reported");
      return told !== null && told.item === undefined && namingOf(context, told.event).candidates.length > 0;
    },
    /** Which thing is meant has to be asked. */
    touchesWhat: ({ context, event }) => {
      const asked = eventIs(event, "may.touch");
      return asked !== null && asked.item === undefined && namingOf(context, "mayTouch").candidates.length > 0;
    },
    touchIsNamed: ({ context, event }) =>
      context.naming?.about === "mayTouch" && eventIs(event, "may.touch")?.item !== undefined,
    asksToTouch: ({ context }) => context.naming?.about === "mayTouch",
    endsExposure: ({ context, event }) =>
      context.world.exposure === "firstAid" && eventIs(event, "event.reported")?.event === "stopEarly",
    /** A code held up now is of something that the step here takes up. */
    expectsNoLot: ({ context }) => lotMeant(context) === null,
    isPastItsDay: ({ context, event }) => {
      const expiry = eventIs(event, "lot.shown")?.expiry ?? null;
      return expiry !== null && context.world.today > expiry;
    },
    isKnownLot: ({ context: { world }, event }) => {
      const shown = eventIs(event, "lot.shown");
      const told = { lot: shown?.lot, expiry: shown?.expiry ?? null };
      return Object.values(world.lots).some(({ lot, expiry }) => lot === told.lot && expiry === told.expiry);
    },
    namesNoItem: ({ event }) => eventIs(event, "item.outOfUse")?.item === undefined,
    mayTagOut: ({ context, event }) => {
      const item = eventIs(event, "item.outOfUse")?.item;
      return item !== undefined && canBeTaggedOut(context.world.station, kindsIn(context.input), item);
    },
    tagIsNamed: ({ context, event }) => {
      const item = eventIs(event, "item.outOfUse")?.item;
      return item !== undefined && context.naming?.about === "outOfUse" && context.naming.candidates.includes(item);
    },
    hasNoneToTag: ({ context }) => taggable(context).length === 0,
    isOutOfUse: ({ context, event }) => {
      const item = eventIs(event, "item.backInUse")?.item;
      return item !== undefined && context.world.station.items[item]?.at === "taggedOut";
    },
    isOffered: ({ context }) => isOffered(context),
    canUndo: ({ context }) => context.world.before !== null,
    undoLooksSafer: ({ context }) => looksSafer(context.world),
    planIsSound: ({ context, event }) => {
      const told = eventIs(event, "plan.chosen");
      return told !== null && planIsSound(context.input, context.world, told.order);
    },
    moreCandidates: ({ context }) => (context.naming ? context.naming.at + 1 < choicesIn(context.naming) : false),
    dayTurned: ({ context, event }) => {
      const today = eventIs(event, "time.witnessed")?.today;
      return today !== undefined && today !== context.world.today;
    },
  },
  actions: {
    // the walk
    stateHere: enqueueActions(({ context, enqueue, event }) => {
      let { world, pendingMs } = context;
      for (const bare of hereEntered(context)) {
        const fact = { ...bare, witnessedMs: pendingMs, cause: causeOf(context, event) } as SessionFact;
        world = fold(context.input, world, fact);
        pendingMs = 0;
        enqueue.emit(fact);
      }
      enqueue.assign({ world, pendingMs });
      if (stepHere(context.input, world)?.kind === "count") enqueue.raise({ type: "count.due" });
    }),
    walkOn: raise({ type: "walk.on" }),
    /** A spray may have been the step here; the place then stands behind it, and nothing has been read out yet. */
    walkOnIfStepDone: enqueueActions(({ context, event, enqueue }) => {
      const { world } = context;
      const moved = world.before !== null && world.beforeCause === causeOf(context, event);
      if (moved && indexHere(world) !== indexHere(world.before)) enqueue.raise({ type: "walk.on" });
    }),
    /** As if the step were reported done: what it says and wipes is judged in one place. */
    hearDone: enqueueActions(({ context, event, enqueue }) =>
      enqueue.raise({ type: "step.done", cause: causeOf(context, event) }),
    ),
    keepFinish: raise({ type: "finish.kept" }),
    /** The count is settled: its step is done, and the walk goes on. */
    passCount: enqueueActions(({ context, enqueue }) => {
      if (stepHere(context.input, context.world)?.kind !== "count") return;
      enqueue("stateStepsDone");
      enqueue.raise({ type: "walk.on" });
    }),
    countAgain: enqueueActions(({ context, enqueue }) => {
      if (stepHere(context.input, context.world)?.kind === "count") enqueue.raise({ type: "count.due" });
    }),
    passIfCounted: enqueueActions(({ context, enqueue }) => {
      const counts = stepHere(context.input, context.world)?.kind === "count";
      if (counts && context.naming?.about === "discrepancy") enqueue("stateStepsDone");
    }),
    stateBegan: state((_m, e) => [
      { type: "v1.SessionBegan", today: eventIs(e, "session.begin")?.today ?? "0000-00-00" },
      { type: "v1.PhaseEntered", phase: "setUp" },
    ]),
    stateStepsDone: state((m) => stepsDone(m)),
    stateSkipped: state((m, e) => {
      const step = stepHere(m.input, m.world);
      const reason = eventIs(e, "reason.given")?.reason;
      if (!step || !reason) return [];
      const skipped: BareFact = { type: "v1.StepSkipped", step: step.id, reason };
      return reason === "notForClient"
        ? [skipped]
        : [skipped, { type: "v1.Deviation", code: "stepLeftOut", item: null, step: step.id }];
    }),
    stateProblem: state((m) => {
      const step = stepHere(m.input, m.world)?.id ?? null;
      return [
        { type: "v1.ProblemReported", step },
        { type: "v1.Deviation", code: "problemReported", item: null, step },
      ];
    }),
    stateBack: state((m) => earlierEntered(m)),
    statePlan: state((_m, e) => {
      const told = eventIs(e, "plan.chosen");
      return told ? [{ type: "v1.PlanChosen", order: [...told.order] }] : [];
    }),
    /** The rest goes on in the planned order; if that puts another step here, it is read out. */
    takePlan: enqueueActions(({ context: { input, world }, event, enqueue }) => {
      const order = eventIs(event, "plan.chosen")?.order ?? null;
      const after = stepHere(input, { ...world, order });
      enqueue("statePlan");
      if (after !== null && after !== stepHere(input, world)) enqueue("stateHere");
    }),
    /** Asked only where no other question waits for a yes. */
    offerOutOfUse: assign(({ context }) => {
      const step = stepHere(context.input, context.world)?.id ?? null;
      const waits = Object.values(context.world.clocks).some((c) => c.state === "timeUp" || c.state === "doubtful");
      return { offered: step !== null && !waits && mayHaveToGo(context) ? step : null };
    }),
    forgetOffer: assign({ offered: null }),
    askOutOfUse: assign(({ context }) => ({ naming: namingOf(context, "outOfUse") })),
    stateOutOfUse: state((_m, e) => {
      const item = eventIs(e, "item.outOfUse")?.item;
      return item === undefined ? [] : [{ type: "v1.ItemOutOfUse", item }];
    }),
    stateBackInUse: state((_m, e) => {
      const item = eventIs(e, "item.backInUse")?.item;
      return item === undefined ? [] : [{ type: "v1.ItemBackInUse", item }];
    }),
    stateFlowEnded: state((m) => {
      const flow = flowHere(m.world);
      return flow ? [{ type: "v1.FlowEnded", event: flow.event }] : [];
    }),

    // phases
    enterProcedure: state(() => [{ type: "v1.PhaseEntered", phase: "procedure" }]),
    enterDressing: state(() => [{ type: "v1.PhaseEntered", phase: "dressing" }]),
    enterBreakdown: state(() => [{ type: "v1.PhaseEntered", phase: "breakdown" }]),
    stateClosed: state((m) => closing(m)),
    keepClose: raise({ type: "close.kept" }),
    statePaused: state(() => [{ type: "v1.Paused" }]),
    stateResumed: state(() => [{ type: "v1.Resumed" }]),
    stateBrisk: state((_m, e) => [{ type: "v1.BriskSet", on: eventIs(e, "brisk.set")?.on ?? false }]),

    // wet clocks
    witness: assign(({ context, event }) => ({
      pendingMs: context.pendingMs + Math.max(0, Math.round(eventIs(event, "time.witnessed")?.elapsedMs ?? 0)),
    })),
    stateTimePassed: state((m) => timePassed(m, m.pendingMs)),
    stateReapplyPlanned: state(({ world, pendingMs }, e) => {
      const { clocks } = credit(world, pendingMs);
      return (eventIs(e, "reapply.planned")?.surfaces ?? []).flatMap((surface): BareFact[] => {
        const clock = clocks[surface];
        return clock && owesReapply(clock) && !clock.reapplyPlanned ? [{ type: "v1.ReapplyPlanned", surface }] : [];
      });
    }),
    stateDay: state((_m, e) => [{ type: "v1.DayTurned", today: eventIs(e, "time.witnessed")?.today ?? "0000-00-00" }]),
    stateGap: state((_m, e) => [{ type: "v1.GapSeen", why: eventIs(e, "time.gap")?.why ?? "drift" }]),
    stateApplied: state((m, e) => {
      const surface = surfaceIn(e);
      return sprayed(m, surface === undefined ? (spraysMeant(m, m.askedSprays)[0] ?? []) : [surface]);
    }),
    stateWiped: state((m, e) => {
      const surface = surfaceIn(e) ?? Object.keys(m.world.clocks)[0];
      return surface === undefined ? [] : surfaceWiped(m, surface);
    }),
    stateWipedEarlyHere: state((m) => {
      const step = stepHere(m.input, m.world)?.id ?? null;
      return notReadyToWipe(m).flatMap((id) => surfaceWiped(m, id, step));
    }),
    stateYes: state((m, e) => yesTo(questioned(m.world, m.asked, surfaceIn(e)))),
    stateNo: state((m, e) => noTo(questioned(m.world, m.asked, surfaceIn(e)))),
    noteAsked: assign(({ context, event }) => {
      const told = eventIs(event, "question.asked");
      if (!told) return {};
      const { about, surfaces } = told;
      if (about === "reapply" || about === "wetAgain")
        return { askedSprays: [...context.askedSprays, surfaces].slice(-8) };
      return { asked: { about, surfaces }, offered: null };
    }),
    forgetAsked: assign({ asked: null }),

    // naming what a report left open
    askName: assign(({ context, event }) => {
      const told = eventIs(event, "event.reported");
      if (told) return { naming: namingOf(context, told.event) };
      if (event.type === "may.touch") return { naming: namingOf(context, "mayTouch") };
      if (event.type === "surface.wiped") return { naming: namingOf(context, "wiped") };
      return { naming: namingSprays(context, spraysMeant(context, context.askedSprays)) };
    }),
    askDiscrepancy: assign(({ context }) => ({ naming: namingOf(context, "discrepancy") })),
    askNext: assign(({ context }) => ({
      naming: context.naming ? { ...context.naming, at: context.naming.at + 1 } : null,
    })),
    stateNamed: state((m) => (m.naming ? named(m, m.naming, m.naming.candidates[m.naming.at] ?? null) : [])),
    stateUnnamed: state((m) => (m.naming ? named(m, m.naming, null) : [])),
    forgetName: assign({ naming: null }),
    stateEvent: state((_m, e) => {
      const told = eventIs(e, "event.reported");
      return told ? eventHappened(told.event, told.item ?? null) : [];
    }),
    stateMayTouch: state((m, e) => touchAsked(m, eventIs(e, "may.touch")?.item ?? null)),
    stateCodeShown: state((m, e) => {
      const shown = eventIs(e, "lot.shown");
      return shown ? codeShown(m, shown) : [];
    }),
    stateCodeRefused: state((m, e) => {
      const refused = eventIs(e, "code.refused");
      return refused ? [refusal(refused.type, refused.why, lotMeant(m))] : [];
    }),
    stateShownLot: state(({ world: { lotShown } }) => (lotShown ? [{ type: "v1.LotGiven", ...lotShown }] : [])),
    stateLot: state((_m, e) => {
      const told = eventIs(e, "lot.given");
      return told ? [{ type: "v1.LotGiven", item: told.item, lot: told.lot, expiry: told.expiry }] : [];
    }),

    stateNote: state((_m, e) => {
      const told = eventIs(e, "note.recorded");
      return told ? [{ type: "v1.NoteKept", note: told.note, lengthMs: told.lengthMs }] : [];
    }),

    // sharps
    stateCountAgrees: state(({ world }) => [
      { type: "v1.SharpsCounted", expected: world.sharps.opened, inContainer: world.sharps.opened },
    ]),
    stateCountDiffers: state(({ world }, e) => [
      {
        type: "v1.SharpsCounted",
        expected: world.sharps.opened,
        inContainer: eventIs(e, "sharps.counted")?.inContainer ?? null,
      },
    ]),
    stateRecount: state(() => [{ type: "v1.RecountAsked" }]),
    stateDiscrepancy: state((_m, e) => {
      const reason: DiscrepancyReason = eventIs(e, "sharps.explained")?.reason ?? "unexplained";
      return [
        { type: "v1.SharpsDiscrepancy", reason },
        { type: "v1.Deviation", code: "sharpsMismatch", item: null, step: null },
      ];
    }),

    // exposure
    stateExposure: state(() => [{ type: "v1.ExposureReported" }]),
    stateResuming: state(() => [{ type: "v1.ExposureAnswered", choice: "resume" }]),
    stateExposureResumed: state(() => [{ type: "v1.ExposureEnded", outcome: "resumed" }]),
    stateExposureEnded: state(() => [
      { type: "v1.ExposureAnswered", choice: "end" },
      { type: "v1.ExposureEnded", outcome: "ended" },
    ]),
    endExposure: raise({ type: "exposure.end" }),
    resumeAfterExposure: enqueueActions(({ context, event, enqueue }) =>
      enqueue.raise({ type: "session.resume", cause: causeOf(context, event) }),
    ),

    // the ear, undo, refusals
    stateEarLost: state(() => [{ type: "v1.EarLost" }]),
    stateEarBack: state(() => [{ type: "v1.EarBack" }]),
    stateUndone: state((m) => [{ type: "v1.Undone", fromCause: m.world.beforeCause ?? 0 }]),
    refuseNotNow: refuse("notNow"),
    refuseAnswerFirst: refuse("answerFirst"),
    refusePaused: refuse("paused"),
    refuseNotSkippable: refuse("notSkippable"),
    refuseNothingToUndo: refuse("nothingToUndo"),
    refuseNoEarlierStep: refuse("noEarlierStep"),
    refuseStepsLeft: refuse("stepsLeft"),
    refuseSharps: refuse("sharpsNotSettled"),
    refuseWetClockRuns: state(({ world }, event) => {
      const running = Object.values(world.clocks).find((c) => c.state !== "ready");
      return [refusal(event.type, "wetClockRuns", running?.surface ?? null)];
    }),
  },
});
