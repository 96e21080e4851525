import { session } from "./parts";
import { walking } from "./walking";

/** Everything comes apart in an order that spreads nothing. Closing is asked for, read back, and only then kept. */
export const breakdown = session.createStateConfig({
  on: {
    "walk.on": [...walking],
    "exposure.end": { actions: "stateHere" },
    "close.kept": { target: "closed", actions: "stateClosed" },
  },
});
