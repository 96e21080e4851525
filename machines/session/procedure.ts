import { session } from "./parts";
import { walking } from "./walking";

/**
 * At work there is no list to walk: things happen, each with a short flow of its own. Fresh gloves, dressing and the
 * written aftercare sheet come before anything is taken down.
 */
export const procedure = session.createStateConfig({
  initial: "atWork",
  on: { "exposure.end": { target: "breakdown", actions: ["enterBreakdown", "stateHere"] } },
  states: {
    atWork: {
      on: {
        "walk.on": [
          { guard: "flowStopsTheWork", target: "dressing", actions: ["stateFlowEnded", "enterDressing", "stateHere"] },
          ...walking,
        ],
        "finish.kept": { target: "dressing", actions: ["enterDressing", "stateHere"] },
      },
    },
    dressing: {
      on: {
        "walk.on": [
          ...walking,
          { guard: "listIsOver", target: "#session.phase.breakdown", actions: ["enterBreakdown", "stateHere"] },
        ],
      },
    },
  },
});
