/** The page's end of the ear that runs in a worker. */
import type { EarPort, EarReport } from "./port";

/** @param modelFolder Address of the folder with model.json and model.bin, ending in a slash; of this origin. */
export function workerEar(modelFolder: URL): EarPort {
  const worker = new Worker(new URL("./ear.worker.ts", import.meta.url), { type: "module", name: "ear" });
  const listeners = new Set<(report: EarReport) => void>();
  const report = (one: EarReport) => {
    for (const listen of [...listeners]) listen(one);
  };
  worker.addEventListener("message", ({ data }: MessageEvent<EarReport>) => report(data));
  worker.addEventListener("error", (event) => {
    report({ type: "unusable", code: "unreadable", message: event.message || "the recogniser could not be started" });
  });
  worker.postMessage({ modelFolder: modelFolder.href });
  return {
    tell(order) {
      const given = order.type === "sound" ? [order.samples, ...(order.played ? [order.played] : [])] : [];
      worker.postMessage(
        order,
        given.map((samples) => samples.buffer as ArrayBuffer),
      );
    },
    onReport(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      listeners.clear();
      worker.terminate();
    },
  };
}
