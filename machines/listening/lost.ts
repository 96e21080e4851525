import { listening } from "./parts";

/** The microphone is gone: wait, try again, wait longer. What only a person can mend waits for "listen.start". */
export const lost = listening.createStateConfig({
  initial: "waiting",
  on: {
    "time.witnessed": {
      actions: [
        { type: "pass", params: ({ event }) => ({ elapsedMs: event.elapsedMs }) },
        { type: "passLost", params: ({ event }) => ({ elapsedMs: event.elapsedMs }) },
      ],
    },
    "listen.start": ".reopening",
  },
  states: {
    waiting: {
      entry: "startWaiting",
      always: [
        { guard: "needsAPerson", target: "forAPerson" },
        { guard: "hasWaited", target: "reopening", actions: "waitLonger" },
      ],
    },
    forAPerson: {},
    reopening: {
      entry: ["startWaiting", "orderOpen"],
      always: { guard: "attemptIsDead", target: "waiting", actions: "orderClose" },
      on: {
        "listen.start": {},
        "microphone.opened": "#listening.listening",
        "microphone.refused": {
          target: "waiting",
          actions: { type: "lose", params: ({ event }) => ({ reason: event.reason }) },
        },
        "microphone.lost": {
          target: "waiting",
          actions: [{ type: "lose", params: ({ event }) => ({ reason: event.reason }) }, "orderClose"],
        },
      },
    },
  },
});
