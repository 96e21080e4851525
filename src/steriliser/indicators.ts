/**
 * When the next test of the steriliser is due, by the studio's chosen rule: weekly (CDC 2008) or monthly (California HSC
 * 119315(b)(2)), and after installation or a major repair where the rule says so.
 */
import { addDays, type CivilDate, compareDates } from "../due/calendar";
import { addSpan, type CalendarSpan } from "../due/duration";
import type { CycleClass } from "./load";

export type BiologicalRule = { readonly every: CalendarSpan; readonly alsoAfter: readonly ServiceEvent["kind"][] };

export type ServiceEvent = { readonly kind: "installation" | "major repair"; readonly on: CivilDate };

export const weekly: BiologicalRule = { every: { weeks: 1 }, alsoAfter: [] };
export const monthly: BiologicalRule = { every: { months: 1 }, alsoAfter: ["installation", "major repair"] };

export type TestDue = {
  readonly dueOn: CivilDate;
  readonly because: "never tested" | "interval" | ServiceEvent["kind"];
  readonly state: "later" | "due today" | "overdue";
};

/**
 * @param lastOn day of the last biological test, null if there was none.
 * @param today  the day at the studio. A monthly test of the 31st is next due on the last day of a shorter month.
 * A service event since the last test makes a test due on the day of the event: before the next load.
 */
export function biologicalDue(
  lastOn: CivilDate | null,
  events: readonly ServiceEvent[],
  rule: BiologicalRule,
  today: CivilDate,
): TestDue {
  const since = events
    .filter((event) => rule.alsoAfter.includes(event.kind) && (lastOn === null || compareDates(event.on, lastOn) > 0))
    .sort((a, b) => compareDates(a.on, b.on));
  const [event] = since;
  if (lastOn === null)
    return {
      dueOn: event?.on ?? today,
      because: event?.kind ?? "never tested",
      state: stateOf(event?.on ?? today, today),
    };
  const byInterval = addSpan(lastOn, rule.every, "monthEnd");
  if (event && compareDates(event.on, byInterval) <= 0)
    return { dueOn: event.on, because: event.kind, state: stateOf(event.on, today) };
  return { dueOn: byInterval, because: "interval", state: stateOf(byInterval, today) };
}

/** Bowie-Dick: each day before the first load, empty chamber, 134 °C for 3.5 min, sterilisers with vacuum only. */
export function bowieDickDue(hasVacuum: boolean, lastPassedOn: CivilDate | null, today: CivilDate): TestDue | null {
  if (!hasVacuum) return null;
  const dueOn = lastPassedOn && compareDates(lastPassedOn, today) >= 0 ? addDays(today, 1) : today;
  return { dueOn, because: lastPassedOn ? "interval" : "never tested", state: stateOf(dueOn, today) };
}

export type LoadIndicator = { readonly what: string; readonly source: string };

/** What goes in with every load. An outer chemical indicator is not needed where the inner one can be seen. */
export function indicatorsForLoad(load: {
  readonly implants: boolean;
  readonly innerVisible: boolean;
  readonly place: "california" | "other";
  readonly cycleClass: CycleClass;
}): readonly LoadIndicator[] {
  const cdc = "CDC 2008 disinfection and sterilization guideline";
  const list: LoadIndicator[] = [
    { what: "time, temperature and pressure read off", source: cdc },
    { what: "chemical indicator inside each pack", source: cdc },
  ];
  if (!load.innerVisible) list.push({ what: "chemical indicator outside each pack", source: cdc });
  if (load.implants) list.push({ what: "biological indicator, with a control of the same lot", source: cdc });
  if (load.place === "california") list.push({ what: "Class V integrator", source: "California HSC 119315(b)(3)" });
  return list;
}

function stateOf(dueOn: CivilDate, today: CivilDate): TestDue["state"] {
  const days = compareDates(today, dueOn);
  return days < 0 ? "later" : days === 0 ? "due today" : "overdue";
}
