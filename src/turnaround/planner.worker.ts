/** The planner in a worker of its own, so that planning never holds up hearing or speaking. */

import "../app/jitless";
import { planner, plannerAsk } from "./planner";

const take = planner({
  tell: (answer) => self.postMessage(answer),
  later: (run) => setTimeout(run, 0),
});

self.addEventListener("message", (event: MessageEvent<unknown>) => take(plannerAsk.parse(event.data)));
