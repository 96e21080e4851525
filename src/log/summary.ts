/** What a session comes to, in codes and figures: the front of its record. Computed from the facts, never typed in. */
import { z } from "zod";
import { DeviationCode, DiscrepancyReason, GapCause, Phase, RefusalReason, SkipReason } from "../session/fact";
import { EventId, Id } from "../session/protocol";
import { WallTime } from "./wallTime";

const Count = z.number().int().min(0);
const Ms = Count;
/** Number of the entry that says so. */
const N = z.number().int().min(1);

/** How something that departed from safe work was put right, where the facts tell. */
export const RemedyCode = z.enum([
  "disinfected",
  "discarded",
  "reprocess",
  "taggedOut",
  "coveredAgain",
  "handsWashed",
  "recounted",
  "doneLater",
]);

export const Summary = z.strictObject({
  outcome: z.enum(["closed", "endedByExposure", "unfinished"]),
  /** Found at the close: do the sharps balance, and what is not ready for the next session. Null while not closed. */
  closed: z.strictObject({ balanced: z.boolean(), unready: z.array(Id) }).nullable(),
  /** In the order they were entered. `watchedMs` is monotonic time; the wall times are the device's word. */
  phases: z.array(z.strictObject({ phase: Phase, from: WallTime, to: WallTime, watchedMs: Ms })),
  /** Every run of a wet clock: time needed by the label, time credited when the run ended, and how it ended. */
  wetClocks: z.array(
    z.strictObject({
      n: N,
      surface: Id,
      product: Id,
      neededMs: Ms,
      creditedMs: Ms,
      ended: z.enum(["ready", "wipedEarly", "dried", "lapsed", "soiled", "restarted", "takenBack", "open"]),
      gaps: Count,
    }),
  ),
  hands: z.strictObject({ washed: Count, rubbed: Count, glovesOn: Count, glovesOff: Count }),
  sharps: z.strictObject({
    opened: Count,
    inContainer: Count,
    parked: Count,
    counts: z.array(z.strictObject({ n: N, expected: Count, inContainer: Count.nullable() })),
    recounts: Count,
    discrepancy: DiscrepancyReason.nullable(),
  }),
  /** Every lot of the session; `n` is null where it was entered on the prepare screen. */
  lots: z.array(
    z.strictObject({
      n: N.nullable(),
      item: Id,
      lot: z.string(),
      expiry: z.iso.date().nullable(),
      known: z.enum(["typed", "scanned", "said"]),
    }),
  ),
  deviations: z.array(
    z.strictObject({
      n: N,
      code: DeviationCode,
      item: Id.nullable(),
      step: Id.nullable(),
      takenBack: z.boolean(),
      /** What was done about it and the entry that tells; null where no fact tells. From rules 1.1.0 on. */
      done: z.strictObject({ what: RemedyCode, n: N }).nullable().optional(),
    }),
  ),
  skipped: z.array(z.strictObject({ n: N, step: Id, reason: SkipReason, takenBack: z.boolean() })),
  refused: z.array(z.strictObject({ n: N, request: z.string(), reason: RefusalReason, item: Id.nullable() })),
  events: z.array(z.strictObject({ n: N, event: EventId, item: Id.nullable(), takenBack: z.boolean() })),
  /** The interruption only; what happened is the artist's own, separate record. */
  exposures: z.array(z.strictObject({ n: N, outcome: z.enum(["open", "ended", "resumed"]) })),
  gaps: z.array(z.strictObject({ n: N, why: GapCause })),
  /** Spoken notes; what was said in them stands beside the chain. From rules 1.3.0 on. */
  notes: z.array(z.strictObject({ n: N, lengthMs: Ms })).optional(),
  /** Things discarded, by stream. */
  waste: z.strictObject({ sharps: Count, contaminated: Count, general: Count, reprocess: Count }),
  /** How many facts are known in which way. */
  known: z.strictObject({ measured: Count, scanned: Count, said: Count }),
  takenBack: Count,
  /** Reusable things out of use at the end. From rules 1.4.0 on. */
  outOfUse: z.array(Id).optional(),
});
export type RemedyCode = z.infer<typeof RemedyCode>;
export type Summary = z.infer<typeof Summary>;
