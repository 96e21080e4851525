import { session } from "./parts";

/** Any number of surfaces, each with its own clock. Time is watched, gaps are not; what was asked aloud is noted. */
export const wetClocks = session.createStateConfig({
  on: {
    "time.witnessed": [
      { guard: "dayTurned", actions: ["witness", "stateDay", "stateTimePassed"] },
      { actions: ["witness", "stateTimePassed"] },
    ],
    "time.gap": { actions: ["stateGap", "forgetAsked"] },
    "reapply.planned": { actions: "stateReapplyPlanned" },
    "question.asked": { actions: "noteAsked" },
  },
});
