/** The one way through: an event in, the facts it would state and the state that would follow. Nothing has happened yet. */
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import type { SessionFact } from "../../src/session/fact";
import { foldAll } from "../../src/session/fold";
import type { SessionInput } from "../../src/session/sessionInput";
import { stepHere, type World, worldAtStart } from "../../src/session/world";
import { sessionMachine } from "./machine";
import type { SessionMemory } from "./parts";
import type { SessionEvent } from "./vocabulary";

export type SessionState = SnapshotFrom<typeof sessionMachine>;

const memoryOf = (input: SessionInput, world: World): SessionMemory => ({
  input,
  world,
  pendingMs: 0,
  naming: null,
  asked: null,
  askedSprays: [],
  offered: null,
});

/** Before the first word: nothing is stated until `session.begin`. `rules`: the version that its header names. */
export const begin = (input: SessionInput, rules?: string): SessionState =>
  initialTransition(sessionMachine, memoryOf(input, worldAtStart(input, rules)))[0];

/**
 * The state of a session from its facts. Where we were in a question is not kept: it is asked again.
 * @param facts every fact of the session, in order.
 * @param rules the version that its header names: it goes on by those that it began with.
 */
export function resume(input: SessionInput, facts: readonly SessionFact[], rules?: string): SessionState {
  const world = foldAll(input, facts, rules);
  return sessionMachine.resolveState({ value: standing(input, world), context: memoryOf(input, world) });
}

/** Where the chart stands when the world is so and no question is open, but for the count of the sharps. */
export function standing(input: SessionInput, world: World) {
  const counts = stepHere(input, world)?.kind === "count" && world.sharps.counted !== "balanced";
  const phase = {
    setUp: "setUp",
    procedure: { procedure: "atWork" },
    dressing: { procedure: "dressing" },
    breakdown: "breakdown",
    closed: "closed",
  } as const;
  return {
    exposure: world.exposure,
    phase: phase[world.phase],
    conversation: counts ? { readBack: "sharps" } : "open",
    wetClocks: {},
  } as const;
}

export interface Decision {
  readonly next: SessionState;
  readonly facts: readonly SessionFact[];
}

/**
 * What an event would change and the facts it would state. The caller writes the facts to disk, and only then adopts
 * `next`, shows it and speaks. Before it begins and after it
 * is closed, a session takes nothing.
 */
export function decide(state: SessionState, event: SessionEvent): Decision {
  const { world } = state.context;
  if (world.phase === "closed" || (world.count === 0) !== (event.type === "session.begin"))
    return { next: state, facts: [] };
  const told = { ...event, cause: world.count };
  const [next, actions] = transition(sessionMachine, state, told);
  // xstate 5.33 returns emitted events among the actions but leaves them out of its types.
  const said = actions as readonly { type: string; params?: unknown }[];
  const facts = said.filter((a) => a.type === "xstate.emit").map((a) => (a.params as { event: SessionFact }).event);
  return { next, facts };
}
