/**
 * What the session states: past tense, versioned, codes and never words. One Zod schema for each kind, since facts
 * cross to disk and to other people. The log wraps each in an envelope (src/log); `fold` says what is so after them.
 */
import { z } from "zod";
import { EventId, Id, listNames } from "./protocol";

const Ms = z.number().int().min(0);
const Day = z.iso.date();

export const phases = ["setUp", "procedure", "dressing", "breakdown", "closed"] as const;
export const Phase = z.enum(phases);
export const SkipReason = z.enum(["notForClient", "noStock", "ownDecision"]);
export const GapCause = z.enum(["reload", "sleep", "drift", "clockSet"]);
export const discrepancyReasons = ["lost", "miscounted", "exposure", "unexplained"] as const;
export const DiscrepancyReason = z.enum(discrepancyReasons);

/** Why a request was not allowed; each has a sentence that says what would make it allowed. */
export const RefusalReason = z.enum([
  "notNow",
  "answerFirst",
  "paused",
  "handsNotWashed",
  "glovesStillOn",
  "wetClockRuns",
  "outOfDate",
  "sharpsNotCounted",
  "sharpsNotSettled",
  "stepsLeft",
  "notSkippable",
  "nothingToUndo",
  "noNeedleInUse",
  "noEarlierStep",
  "unknownItem",
  "noSuchEvent",
  "cleanFirst",
  /** Of a thing that was asked about, or that the step would touch. */
  "glovesSoiled",
  "glovesFirst",
  "itemSoiled",
  "outOfUse",
  /** The skin has had no antiseptic. */
  "skinFirst",
  /** A code was held up that says no product, or says it wrongly. */
  "codeUnreadable",
  "codeWithoutLot",
  /** It reads, but may have run two things into one. */
  "codeUnsure",
]);

/** What departed from safe work, found by the rules of the station. */
export const DeviationCode = z.enum([
  "touchedWithSoiledGloves",
  "touchedWithUnwashedHands",
  "glovesOverUnwashedHands",
  "glovesOverGloves",
  "washedInGloves",
  "appliedBeforeCleaning",
  "coveredUnclean",
  "openedWithSoiledGloves",
  "openedWithUnwashedHands",
  "openedAgain",
  "openedOutOfDate",
  "appliedOutOfDate",
  "sharpNotInSharps",
  "wipedEarly",
  "wipedWithSoiledGloves",
  "neverWet",
  "skinBrokenWithoutGloves",
  "skinNotPrepared",
  "usedTaggedOut",
  "usedUnsterile",
  "broughtBackSoiled",
  "stepLeftOut",
  "problemReported",
  "dropped",
  "touchedUnplanned",
  "barrierTorn",
  "gloveTorn",
  "sharpsMismatch",
]);

const fact = <const K extends string, S extends z.ZodRawShape>(type: K, shape: S) =>
  z.strictObject({
    type: z.literal(type),
    /** Monotonic time watched since the fact before this one, within one page life. */
    witnessedMs: Ms,
    /** Facts of one event share this number. */
    cause: z.number().int().min(0),
    ...shape,
  });

export const SessionFact = z.discriminatedUnion("type", [
  fact("v1.SessionBegan", { today: Day }),
  fact("v1.DayTurned", { today: Day }),
  fact("v1.PhaseEntered", { phase: Phase }),
  /** `group` steps are read together for one answer (brisk mode); 1 otherwise. */
  fact("v1.StepEntered", { list: z.enum([...listNames, "flow"]), step: Id, index: Ms, group: z.number().int().min(1) }),
  fact("v1.StepDone", { step: Id }),
  /** The whole breakdown in the order in which it is walked from here on; what lies behind keeps its place. */
  fact("v1.PlanChosen", { order: z.array(Id).min(1).max(200) }),
  fact("v1.StepSkipped", { step: Id, reason: SkipReason }),
  fact("v1.ProblemReported", { step: Id.nullable() }),
  fact("v1.Refused", { request: z.string().max(40), reason: RefusalReason, item: Id.nullable() }),
  fact("v1.Deviation", { code: DeviationCode, item: Id.nullable(), step: Id.nullable() }),

  fact("v1.WetClockStarted", { surface: Id, product: Id, neededMs: Ms, reapplyWithinMs: Ms.nullable() }),
  fact("v1.ReapplyDue", { surface: Id }),
  /** Asked for ahead of its time, while the hands are free or before the gloves are changed. */
  fact("v1.ReapplyPlanned", { surface: Id }),
  fact("v1.WetClockReapplied", { surface: Id }),
  /** Past the re-apply time without it: nothing counts until it is wet again. */
  fact("v1.WetClockLapsed", { surface: Id }),
  fact("v1.WetClockTimeUp", { surface: Id, creditedMs: Ms }),
  fact("v1.WetClockReady", { surface: Id }),
  fact("v1.WetClockDried", { surface: Id }),
  fact("v1.WetClockTrusted", { surface: Id }),
  fact("v1.WipedEarly", { surface: Id, shortByMs: Ms }),
  fact("v1.SurfaceWiped", { surface: Id }),
  fact("v1.GapSeen", { why: GapCause }),
  fact("v1.TimeWitnessed", {}),

  fact("v1.EventReported", { event: EventId, item: Id.nullable() }),
  fact("v1.FlowEnded", { event: EventId }),
  /** Taken out of use: nothing that a step does reaches it. Taken back, it counts as soiled. */
  fact("v1.ItemOutOfUse", { item: Id }),
  fact("v1.ItemBackInUse", { item: Id }),
  /** A code held up to the camera was read. What it says counts from the `LotGiven` that confirms it. */
  fact("v1.LotShown", { item: Id, lot: z.string().min(1).max(40), expiry: Day.nullable() }),
  fact("v1.LotGiven", { item: Id, lot: z.string().max(40), expiry: Day.nullable() }),
  fact("v1.SharpsCounted", { expected: Ms, inContainer: Ms.nullable() }),
  fact("v1.RecountAsked", {}),
  fact("v1.SharpsDiscrepancy", { reason: DiscrepancyReason }),

  fact("v1.ExposureReported", {}),
  fact("v1.ExposureAnswered", { choice: z.enum(["end", "resume"]) }),
  fact("v1.ExposureEnded", { outcome: z.enum(["ended", "resumed"]) }),

  /** A note was spoken and is kept beside the log: SHA-256 commitment to its sound, and how long it is. */
  fact("v1.NoteKept", { note: z.string().regex(/^[0-9a-f]{64}$/), lengthMs: z.number().int().min(1).max(30_000) }),

  fact("v1.Paused", {}),
  fact("v1.Resumed", {}),
  fact("v1.BriskSet", { on: z.boolean() }),
  fact("v1.EarLost", {}),
  fact("v1.EarBack", {}),
  fact("v1.Undone", { fromCause: z.number().int().min(0) }),
  fact("v1.SessionClosed", { balanced: z.boolean(), unready: z.array(Id).max(120) }),
]);

export type SessionFact = z.infer<typeof SessionFact>;
export type FactOf<T extends SessionFact["type"]> = Extract<SessionFact, { type: T }>;
export type Phase = z.infer<typeof Phase>;
export type SkipReason = z.infer<typeof SkipReason>;
export type GapCause = z.infer<typeof GapCause>;
export type RefusalReason = z.infer<typeof RefusalReason>;
export type DeviationCode = z.infer<typeof DeviationCode>;
export type DiscrepancyReason = z.infer<typeof DiscrepancyReason>;

type Unstamped<F> = F extends unknown ? Omit<F, "witnessedMs" | "cause"> : never;
/** A fact before the chart stamps it with the time witnessed and its cause. */
export type BareFact = Unstamped<SessionFact>;
