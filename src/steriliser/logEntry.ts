/**
 * One line of the steriliser log, with the fields California HSC 119315(b)(5) asks for: date, contents, exposure time
 * and temperature, integrator result, and what was done after a positive biological test. The verdict is kept with the
 * number's method, so that an old entry can be understood without this program.
 */
import { z } from "zod";
import { bands } from "./bands";
import type { CycleVerdict } from "./judge";
import { lethalityMethods } from "./lethality";
import { cycleClasses, loadKinds } from "./load";

const id = z.string().min(1).max(64);
const finite = z.number().min(-1e6).max(1e6);

export const SteriliserLogEntry = z.strictObject({
  cycleId: id,
  steriliserId: id,
  atMs: z.int(),
  cycleClass: z.enum(cycleClasses),
  load: z.array(z.enum(loadKinds)).min(1),
  contents: z.string().min(1).max(500),
  operator: z.string().min(1).max(60),
  verdict: z.strictObject({
    code: z.enum(["held", "not-held", "held-in-air", "held-in-superheat"]),
    bandId: z.enum(bands.map((band) => band.id) as [string, ...string[]]),
    neededMs: z.int().nonnegative(),
    heldMs: z.int().nonnegative(),
    f0: z.strictObject({ minutes: finite, method: z.enum(lethalityMethods), referenceC: finite, zK: finite }),
    steam: z.strictObject({
      finding: z.enum(["saturated", "air", "superheat", "unknown"]),
      worstK: finite.nullable(),
      toleranceK: finite,
    }),
    mostGapMs: z.int().positive(),
    known: z.enum(["measured", "said"]),
  }),
  integrator: z.enum(["passed", "failed", "none"]),
  biological: z.enum(["negative", "positive", "awaited", "none"]),
  /** After a positive test: how the items were cleaned and proof of a negative test before use again. */
  afterPositive: z.string().max(1000),
});
export type SteriliserLogEntry = z.infer<typeof SteriliserLogEntry>;

/** The part of the entry that follows from the verdict; times are whole milliseconds. */
export function entryVerdict(v: CycleVerdict): SteriliserLogEntry["verdict"] {
  const { finding, worstK, toleranceK } = v.steam;
  const { minutes, method, referenceC, zK } = v.lethality;
  return {
    code: v.code,
    bandId: v.band.id,
    neededMs: v.band.holdMs,
    heldMs: Math.floor(v.heldMs),
    f0: { minutes: Math.min(minutes, 1e6), method, referenceC, zK },
    steam: { finding, worstK, toleranceK },
    mostGapMs: v.mostGapMs,
    known: v.known,
  };
}
