/** One event through the chart: the new state and what the voice is ordered to do. */
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { announcingMachine } from "./machine";
import type { AnnouncingEvent, AnnouncingOrder } from "./vocabulary";

export type AnnouncingState = SnapshotFrom<typeof announcingMachine>;

export const startAnnouncing = (language: string): AnnouncingState =>
  initialTransition(announcingMachine, { language })[0];

export function decideAnnouncing(
  state: AnnouncingState,
  event: AnnouncingEvent,
): { next: AnnouncingState; orders: readonly AnnouncingOrder[] } {
  const [next, actions] = transition(announcingMachine, state, event);
  // xstate 5.33 returns emitted events among the actions but leaves them out of its types.
  const said = actions as readonly { type: string; params?: unknown }[];
  const orders = said
    .filter((a) => a.type === "xstate.emit")
    .map((a) => (a.params as { event: AnnouncingOrder }).event);
  return { next, orders };
}
