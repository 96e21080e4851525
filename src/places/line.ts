/**
 * One rule of one place: what it says, whence, and how sure we are. Profiles are made of these lines, a studio may
 * override any of them, and whatever is not confirmed says so wherever it is shown.
 */
import { z } from "zod";
import { recordKinds } from "../due/retention";

const Span = z.union([
  z.strictObject({ days: z.int().positive().max(36_500) }),
  z.strictObject({ weeks: z.int().positive().max(5000) }),
  z.strictObject({ months: z.int().positive().max(1200) }),
  z.strictObject({ years: z.int().positive().max(100) }),
]);

const words = z.string().min(1).max(300);

export const LineValue = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("age"), minimumYears: z.int().min(0).max(30) }),
  z.strictObject({
    kind: z.literal("keep"),
    record: z.enum(recordKinds),
    keep: Span,
    from: z.enum(["record date", "end of employment", "use", "end of the year"]),
  }),
  z.strictObject({
    kind: z.literal("biological-test"),
    every: Span,
    alsoAfter: z.array(z.enum(["installation", "major repair"])),
  }),
  z.strictObject({ kind: z.literal("report"), what: words, workingDays: z.int().positive().max(60) }),
  z.strictObject({ kind: z.literal("waste"), stream: words, colour: words, code: words.nullable(), route: words }),
  z.strictObject({ kind: z.literal("pack-label"), carries: z.array(z.enum(["date", "initials", "indicator"])) }),
  z.strictObject({ kind: z.literal("sharps-fill"), share: z.number().gt(0).max(1) }),
  z.strictObject({ kind: z.literal("words"), words }),
]);
export type LineValue = z.infer<typeof LineValue>;

/** `confirmed`: the text or a copy of it was read. `not confirmed`: commonly said, value unknown or disputed. */
export const LineStatus = z.enum(["confirmed", "from memory", "not confirmed", "studio's own"]);
export type LineStatus = z.infer<typeof LineStatus>;

export const PlaceLine = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)?$/),
  /** null where the rule exists or is said to, but its figure is not known: the studio must fill it in. */
  value: LineValue.nullable(),
  source: z.string().min(1).max(200),
  year: z.int().min(1900).max(2100).nullable(),
  status: LineStatus,
});
export type PlaceLine = z.infer<typeof PlaceLine>;

export const PlaceProfile = z
  .strictObject({
    id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
    name: z.string().min(1).max(80),
    lines: z.array(PlaceLine).max(200),
  })
  .refine((place) => new Set(place.lines.map((line) => line.id)).size === place.lines.length, {
    path: ["lines"],
    message: "two lines have the same id",
  });
export type PlaceProfile = z.infer<typeof PlaceProfile>;

export function confirmed(id: string, value: LineValue, source: string, year: number | null = null): PlaceLine {
  return { id, value, source, year, status: "confirmed" };
}

export function remembered(id: string, value: LineValue, source: string, year: number | null = null): PlaceLine {
  return { id, value, source, year, status: "from memory" };
}

export function unknown(id: string, source: string): PlaceLine {
  return { id, value: null, source, year: null, status: "not confirmed" };
}

export function keep(
  record: (typeof recordKinds)[number],
  span: z.infer<typeof Span>,
  from: Extract<LineValue, { kind: "keep" }>["from"] = "record date",
): LineValue {
  return { kind: "keep", record, keep: span, from };
}
