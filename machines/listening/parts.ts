import { assign, emit, setup } from "xstate";
import {
  attemptMs,
  doubtMs,
  firstWaitMs,
  type ListeningEvent,
  type ListeningMemory,
  type ListeningOrder,
  type LostBecause,
  longestWaitMs,
} from "./vocabulary";

export const atStart: ListeningMemory = {
  lostBecause: null,
  lostForMs: 0,
  waitedMs: 0,
  nextWaitMs: firstWaitMs,
  candidates: [],
};

const onlyAPersonMends: readonly (LostBecause | null)[] = ["denied", "unsupported", "recogniser"];

/** Guards and actions by name; the chart says only when they happen. */
export const listening = setup({
  types: {
    context: {} as ListeningMemory,
    events: {} as ListeningEvent,
    emitted: {} as ListeningOrder,
  },
  guards: {
    wasLost: ({ context }) => context.lostBecause !== null,
    /** Asking again would only be refused again, or cannot work here: a person must act first. */
    needsAPerson: ({ context }) => onlyAPersonMends.includes(context.lostBecause),
    hasWaited: ({ context }) => context.waitedMs >= context.nextWaitMs,
    attemptIsDead: ({ context }) => context.waitedMs >= attemptMs,
    doubtIsOld: ({ context }) => context.waitedMs >= doubtMs,
  },
  actions: {
    orderOpen: emit({ type: "microphone.open" }),
    orderClose: emit({ type: "microphone.close" }),
    stateLost: emit(({ context }) => ({ type: "ear.lost" as const, reason: context.lostBecause ?? "failed" })),
    stateBack: emit(({ context }) => ({ type: "ear.back" as const, lostForMs: context.lostForMs })),
    lose: assign((_, p: { reason: LostBecause }) => ({ lostBecause: p.reason })),
    forgetLoss: assign({ lostBecause: null, lostForMs: 0, nextWaitMs: firstWaitMs }),
    startWaiting: assign({ waitedMs: 0 }),
    waitLonger: assign({ nextWaitMs: ({ context }) => Math.min(longestWaitMs, context.nextWaitMs * 2) }),
    pass: assign({ waitedMs: ({ context }, p: { elapsedMs: number }) => context.waitedMs + p.elapsedMs }),
    passLost: assign({ lostForMs: ({ context }, p: { elapsedMs: number }) => context.lostForMs + p.elapsedMs }),
    doubt: assign((_, p: { candidates: ListeningMemory["candidates"] }) => ({ candidates: p.candidates })),
    forgetDoubt: assign({ candidates: [] }),
  },
});
