/** Guards and actions of announcing, by name. Actions only remember, and emit orders to the voice. */
import { assign, emit, setup } from "xstate";
import type { Utterance } from "../../src/announcements/utterance";
import { enqueue, hush, mustGiveWay, nextOf, pass, putBack, repeat, take, withdraw } from "./queue";
import {
  type AnnouncingEvent,
  type AnnouncingMemory,
  type AnnouncingOrder,
  longestMs,
  type Ms,
  pauseMs,
} from "./vocabulary";

export const announcing = setup({
  types: {
    context: {} as AnnouncingMemory,
    events: {} as AnnouncingEvent,
    emitted: {} as AnnouncingOrder,
    input: {} as { language: string },
  },
  guards: {
    somethingMayBeSaid: ({ context }) => nextOf(context) !== null,
    isThisTurn: ({ context }, p: { turn: number }) => context.speaking?.turn === p.turn,
    isObsolete: ({ context }) => context.speaking?.obsolete === true,
    mustGiveWay: ({ context }) => mustGiveWay(context),
    voiceIsDead: ({ context }) => (context.speaking?.forMs ?? 0) >= longestMs,
  },
  actions: {
    enqueue: assign(({ context }, p: { utterances: readonly Utterance[] }) => enqueue(context, p.utterances)),
    withdraw: assign(({ context }, p: { key: string }) => withdraw(context, p.key)),
    repeat: assign(({ context }) => repeat(context)),
    pass: assign(({ context }, p: { elapsedMs: Ms }) => pass(context, p.elapsedMs)),
    takeNext: assign(({ context }) => take(context)),
    putBack: assign(({ context }) => putBack(context)),
    hush: assign(({ context }) => hush(context)),
    forget: assign({ speaking: null }),
    talkBegins: assign({ isTalk: true }),
    talkEnds: assign({ isTalk: false, quietMs: 0 }),
    orderSpeech: emit(({ context: { speaking, turn } }) => {
      if (speaking === null) throw new Error("ordered to speak with nothing to say");
      return { type: "voice.speak" as const, turn, utterance: speaking.utterance };
    }),
    orderStop: emit(({ context }) => ({ type: "voice.stop" as const, turn: context.turn })),
  },
});

/** Nobody has been heard yet: that is a pause. */
export const atStart = (language: string): AnnouncingMemory => ({
  language,
  waiting: [],
  speaking: null,
  last: null,
  turn: 0,
  isTalk: false,
  quietMs: pauseMs,
});
