/** How a list goes on, the same in every phase: the next step here, or the end of a flow and then what lay under it. */

export const walking = [
  { guard: "hasStepHere", actions: "stateHere" },
  { guard: "flowIsOver", actions: ["stateFlowEnded", "walkOn"] },
] as const;
