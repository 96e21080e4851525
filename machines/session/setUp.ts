import { session } from "./parts";
import { walking } from "./walking";

/** The station is built clean. The work begins when the list is walked and no surface is still wet under a clock. */
export const setUp = session.createStateConfig({
  on: {
    "session.begin": { guard: "notBegun", actions: ["stateBegan", "stateHere"] },
    "walk.on": [
      { guard: "flowStopsTheWork", target: "breakdown", actions: ["stateFlowEnded", "enterBreakdown", "stateHere"] },
      ...walking,
      { guard: "mayBeginWork", target: "procedure", actions: "enterProcedure" },
      { guard: "listIsOver", actions: "refuseWetClockRuns" },
    ],
    "exposure.end": { target: "breakdown", actions: ["enterBreakdown", "stateHere"] },
  },
});
