import { session } from "./parts";

/** A needlestick, a cut, a splash: reachable from anywhere. First aid comes first; then it ends, or is resumed in order. */
export const exposure = session.createStateConfig({
  initial: "none",
  states: {
    none: { on: { "exposure.reported": { target: "firstAid", actions: "stateExposure" } } },
    firstAid: {
      on: {
        "exposure.reported": { actions: "stateExposure" },
        "session.resume": { target: "resuming", actions: ["stateResuming", "stateHere"] },
        "exposure.end": { target: "ended", actions: "stateExposureEnded" },
      },
    },
    resuming: {
      on: {
        "exposure.reported": { target: "firstAid", actions: "stateExposure" },
        "walk.on": { guard: "resumingIsOver", target: "none", actions: ["stateExposureResumed", "stateHere"] },
      },
    },
    ended: { on: { "exposure.reported": { target: "firstAid", actions: "stateExposure" } } },
  },
});
