/** One event through the chart: the new state and what is ordered. */
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { listeningMachine } from "./machine";
import type { ListeningEvent, ListeningOrder } from "./vocabulary";

export type ListeningState = SnapshotFrom<typeof listeningMachine>;

export const startListening = (): ListeningState => initialTransition(listeningMachine)[0];

export function decideListening(
  state: ListeningState,
  event: ListeningEvent,
): { next: ListeningState; orders: readonly ListeningOrder[] } {
  const [next, actions] = transition(listeningMachine, state, event);
  // xstate 5.33 returns emitted events among the actions but leaves them out of its types.
  const said = actions as readonly { type: string; params?: unknown }[];
  const orders = said
    .filter((action) => action.type === "xstate.emit")
    .map((action) => (action.params as { event: ListeningOrder }).event);
  return { next, orders };
}
