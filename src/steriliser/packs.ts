/**
 * A sterile pack: what is in it, from which cycle, by whom, and how long it is good. Shelf life is event-related
 * (sterile until wet, torn or opened: CDC, ST79; from memory); a studio may set months on top, never instead.
 */
import { z } from "zod";
import { addMonths, type CivilDate, compareDates, parseDate, showDate } from "../due/calendar";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";

const Day = z.string().refine((text) => parseDate(text).ok, "not a date such as 2026-11-25");

export const Pack = z.strictObject({
  id: z.string().min(1).max(64),
  cycleId: z.string().min(1).max(64),
  contents: z.string().min(1).max(200),
  wrapped: z.boolean(),
  packedOn: Day,
  initials: z.string().min(1).max(8),
  expiry: z.discriminatedUnion("rule", [
    z.strictObject({ rule: z.literal("event") }),
    z.strictObject({ rule: z.literal("months"), months: z.int().min(1).max(60) }),
  ]),
  /** What has happened to it since; any of these ends its sterility. */
  events: z.array(z.strictObject({ kind: z.enum(["wet", "torn", "opened"]), on: Day })).max(50),
});
export type Pack = z.infer<typeof Pack>;

export type PackState =
  | "sterile"
  | "wet"
  | "torn"
  | "opened"
  | "past its date"
  | "cycle not accepted"
  | "wrapped in a class N cycle"
  | "under recall";

export type PackHistory = {
  readonly cycleAccepted: boolean;
  readonly cycleClass: "B" | "N" | "S";
  /** After a failed biological test, from `recallAfter`. */
  readonly recalled: boolean;
};

/** @param today the day at the studio; a pack is good through the end of its date. */
export function packState(pack: Pack, history: PackHistory, today: CivilDate): PackState {
  if (!history.cycleAccepted) return "cycle not accepted";
  if (pack.wrapped && history.cycleClass === "N") return "wrapped in a class N cycle";
  if (history.recalled) return "under recall";
  const [event] = pack.events;
  if (event) return event.kind;
  const last = goodThrough(pack);
  return last && compareDates(today, last) > 0 ? "past its date" : "sterile";
}

/** Last day by date; null where only events count. A date that does not exist is the month's last day: shorter. */
export function goodThrough(pack: Pack): CivilDate | null {
  if (pack.expiry.rule === "event") return null;
  const packed = parseDate(pack.packedOn);
  return packed.ok ? addMonths(packed.value, pack.expiry.months, "monthEnd") : null;
}

/** Date and operator's initials on every pack: California HSC 119315(a), 25 Texas Admin. Code 229.407(d). */
export function packLabel(
  pack: Pack,
  phrases: SumPhrases = sumsEn,
): { readonly printed: readonly string[]; readonly spoken: string } {
  const say = phrases.steriliser.pack;
  const last = goodThrough(pack);
  const good = last ? say.goodThrough(showDate(last)) : say.untilEvent;
  return {
    printed: [pack.contents, `${pack.packedOn}  ${pack.initials}`, say.ids(pack.id, pack.cycleId), good],
    spoken: say.spoken(pack.contents, pack.packedOn, good),
  };
}
