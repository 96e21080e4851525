/** The page's end of a check that runs in a worker, so that the screen stays awake. One worker for one check. */
import type { Progress, Verdict } from "../check/checkProtocol";
import type { Why } from "../check/why";
import type { Protocol } from "../session/protocol";
import type { CheckReport } from "./check.worker";

export interface Checking {
  /** Never rejects: a check that could not run is "not proved", which counts as no. */
  readonly verdict: Promise<Verdict>;
  /** Ends it; the verdict is then "not proved". */
  stop(): void;
}

/** @param protocol one that passed `readProtocol` */
export function checkInWorker(protocol: Protocol, onProgress: (so: Progress) => void = () => undefined): Checking {
  let stop: () => void = () => undefined;
  const verdict = new Promise<Verdict>((answer) => {
    let worker: Worker;
    const end = (verdict: Verdict) => {
      worker?.terminate();
      answer(verdict);
    };
    const without = (why: Why) => end({ verdict: "notProved", why, states: 0, ms: 0 });
    stop = () => without({ code: "stopped" });
    try {
      worker = new Worker(new URL("./check.worker.ts", import.meta.url), { type: "module", name: "check" });
    } catch {
      answer({ verdict: "notProved", why: { code: "notStarted" }, states: 0, ms: 0 });
      return;
    }
    worker.addEventListener("message", ({ data }: MessageEvent<CheckReport>) => {
      if (data.type === "progress") onProgress(data.so);
      else end(data.verdict);
    });
    worker.addEventListener("error", () => without({ code: "notStarted" }));
    worker.postMessage(protocol);
  });
  return { verdict, stop: () => stop() };
}
