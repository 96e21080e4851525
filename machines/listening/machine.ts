import { hearing } from "./hearing";
import { lost } from "./lost";
import { atStart, listening } from "./parts";

/**
 *   asleep ──start──▶ opening ──▶ listening ──lost──▶ lost
 *      ▲                 │         ├ quiet             ├ waiting, longer each time
 *      └──────stop───────┴─────────├ speaking          ├ reopening ──▶ listening
 *                                  └ unsure            └ forAPerson
 */
export const listeningMachine = listening.createMachine({
  id: "listening",
  context: atStart,
  initial: "asleep",
  states: {
    asleep: { entry: "forgetLoss", on: { "listen.start": "opening" } },
    opening: {
      entry: "orderOpen",
      on: {
        "microphone.opened": "listening",
        "microphone.refused": {
          target: "lost",
          actions: [{ type: "lose", params: ({ event }) => ({ reason: event.reason }) }, "stateLost"],
        },
        "microphone.lost": {
          target: "lost",
          actions: [{ type: "lose", params: ({ event }) => ({ reason: event.reason }) }, "stateLost", "orderClose"],
        },
        "listen.stop": { target: "asleep", actions: "orderClose" },
      },
    },
    listening: {
      ...hearing,
      always: { guard: "wasLost", actions: ["stateBack", "forgetLoss"] },
      on: { ...hearing.on, "listen.stop": { target: "asleep", actions: "orderClose" } },
    },
    lost: { ...lost, on: { ...lost.on, "listen.stop": { target: "asleep", actions: "orderClose" } } },
  },
});
