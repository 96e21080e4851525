/** The page's end of the planner that runs in a worker of its own, so that planning holds up neither ear nor voice. */
import type { PlannerAnswer, PlannerAsk } from "../turnaround/planner";
import { type PlannerPort, sessionNodes } from "../turnaround/plannerPort";
import type { Planned } from "../turnaround/problem";

export function workerPlanner(): PlannerPort {
  const worker = new Worker(new URL("../turnaround/planner.worker.ts", import.meta.url), {
    type: "module",
    name: "planner",
  });
  let question = 0;
  let open: ((answer: Planned | null) => void) | null = null;
  const settle = (answer: Planned | null): void => {
    open?.(answer);
    open = null;
  };
  worker.addEventListener("message", ({ data }: MessageEvent<PlannerAnswer>) => {
    if (data.kind === "answer" && data.question === question) settle(data.answer);
  });
  // Without a planner the list is walked as it is written.
  worker.addEventListener("error", () => settle(null));
  return {
    ask(problem) {
      settle(null);
      question += 1;
      const ask: PlannerAsk = { kind: "plan", question, problem, budgetNodes: sessionNodes };
      return new Promise((answer) => {
        open = answer;
        worker.postMessage(ask);
      });
    },
    close() {
      settle(null);
      worker.terminate();
    },
  };
}
