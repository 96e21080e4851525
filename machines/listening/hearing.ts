import { listening } from "./parts";

/** While the microphone is open: nothing, someone speaking, or a question about two phrases. */
export const hearing = listening.createStateConfig({
  initial: "quiet",
  exit: "forgetDoubt",
  on: {
    "phrase.understood": ".quiet",
    "phrase.unsure": ".unsure",
    "microphone.lost": {
      target: "lost",
      actions: [{ type: "lose", params: ({ event }) => ({ reason: event.reason }) }, "stateLost", "orderClose"],
    },
  },
  states: {
    quiet: { on: { "sound.started": "speaking" } },
    speaking: { on: { "sound.ended": "quiet" } },
    unsure: {
      entry: [
        "startWaiting",
        {
          type: "doubt",
          params: ({ event }) => ({ candidates: event.type === "phrase.unsure" ? event.candidates : [] }),
        },
      ],
      exit: "forgetDoubt",
      on: { "time.witnessed": { actions: { type: "pass", params: ({ event }) => ({ elapsedMs: event.elapsedMs }) } } },
      always: { guard: "doubtIsOld", target: "quiet" },
    },
  },
});
