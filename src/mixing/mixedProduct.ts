/**
 * The mix as a product the session can use: what it was made from, its strength, and a use-by that is enforced like
 * any other expiry. Strength is kept as an exact fraction in text, so a record reads the same for ever.
 */
import { z } from "zod";
import type { Strength } from "./units";
import type { UseBy } from "./useBy";

export const MixedProduct = z
  .strictObject({
    id: z.string().min(1).max(64),
    name: z.string().min(1).max(120),
    kind: z.literal("mixed"),
    strength: z.strictObject({
      unit: z.enum(["gramsPerLitre", "percentVolume"]),
      /** "1", "0.5" is not used: a whole number or a fraction such as "1/2". */
      amount: z.string().regex(/^\d+(\/[1-9]\d*)?$/),
    }),
    madeAtMs: z.int(),
    useByMs: z.int(),
    useByRule: z.enum(["label", "24-hours"]),
    /** Shelf item it was made from. */
    fromItemId: z.string().min(1).max(64),
    /** Label contact time at this strength, seconds. */
    contactS: z.int().positive().max(86_400),
  })
  .refine((p) => p.useByMs > p.madeAtMs, { path: ["useByMs"], message: "use-by must come after making" });

export type MixedProduct = z.infer<typeof MixedProduct>;

export function mixedProduct(facts: {
  readonly id: string;
  readonly name: string;
  readonly resulting: Strength<"gramsPerLitre"> | Strength<"percentVolume">;
  readonly useBy: UseBy;
  readonly fromItemId: string;
  readonly contactS: number;
}): MixedProduct {
  return {
    id: facts.id,
    name: facts.name,
    kind: "mixed",
    strength: { unit: facts.resulting.unit, amount: facts.resulting.amount.toFraction() },
    madeAtMs: facts.useBy.madeAtMs,
    useByMs: facts.useBy.useByMs,
    useByRule: facts.useBy.rule,
    fromItemId: facts.fromItemId,
    contactS: facts.contactS,
  };
}
