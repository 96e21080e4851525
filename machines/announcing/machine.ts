import { announcing, atStart } from "./parts";

/**
 *   silent ──something may be said──▶ speaking
 *          ◀──ended, replaced, hushed, dead, or gives way to a warning──
 *
 * One voice at a time. Time comes in as witnessed milliseconds; the voice is told what to do by emitted orders.
 */
export const announcingMachine = announcing.createMachine({
  id: "announcing",
  context: ({ input }) => atStart(input.language),
  on: {
    announce: { actions: { type: "enqueue", params: ({ event }) => ({ utterances: event.utterances }) } },
    "announcement.withdraw": { actions: { type: "withdraw", params: ({ event }) => ({ key: event.key }) } },
    "announcement.repeat": { actions: "repeat" },
    "announcement.hush": { actions: "hush" },
    "talk.started": { actions: "talkBegins" },
    "talk.ended": { actions: "talkEnds" },
    "time.witnessed": { actions: { type: "pass", params: ({ event }) => ({ elapsedMs: event.elapsedMs }) } },
  },
  initial: "silent",
  states: {
    silent: {
      always: { guard: "somethingMayBeSaid", target: "speaking", actions: ["takeNext", "orderSpeech"] },
    },
    speaking: {
      always: [
        { guard: "isObsolete", target: "silent", actions: ["orderStop", "forget"] },
        { guard: "mustGiveWay", target: "silent", actions: ["orderStop", "putBack"] },
        { guard: "voiceIsDead", target: "silent", actions: ["orderStop", "forget"] },
      ],
      on: {
        "announcement.hush": { target: "silent", actions: ["orderStop", "hush"] },
        "voice.ended": {
          guard: { type: "isThisTurn", params: ({ event }) => ({ turn: event.turn }) },
          target: "silent",
          actions: "forget",
        },
        "voice.failed": {
          guard: { type: "isThisTurn", params: ({ event }) => ({ turn: event.turn }) },
          target: "silent",
          actions: "forget",
        },
      },
    },
  },
});
