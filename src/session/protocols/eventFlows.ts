/** What can happen while working, each with a short flow that ends in a known state of the hands. */
import { type EventFlow, type EventId, eventIds, type Step } from "../protocol";
import type { EventKit } from "./flowParts";
import { flowsOfGloves } from "./flowsOfGloves";
import { flowsOfNeedles } from "./flowsOfNeedles";
import { flowsOfPeople } from "./flowsOfPeople";

const flows: Record<EventId, (kit: EventKit) => Step[]> = { ...flowsOfGloves, ...flowsOfNeedles, ...flowsOfPeople };

export function eventFlows(kit: EventKit): EventFlow[] {
  const asks: Partial<Record<EventId, readonly string[]>> = {
    tornBarrier: kit.covered,
    dropped: kit.droppable,
    touched: kit.touchable,
  };
  return eventIds.map((event) => ({
    event,
    asksItem: [...(asks[event] ?? [])],
    steps: flows[event](kit),
    onwards: event === "stopEarly" ? "dressing" : "continue",
  }));
}
