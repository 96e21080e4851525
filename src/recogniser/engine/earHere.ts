/** An ear in the same thread, behind the same port as the one in a worker: for Node, for tests, for old browsers. */
import type { LoadedModel } from "../network/loadModel";
import type { EarOrder, EarPort, EarReport } from "./port";
import { EarService } from "./service";

export function earHere(loading: Promise<LoadedModel>): EarPort {
  const listeners = new Set<(report: EarReport) => void>();
  const report = (one: EarReport) =>
    queueMicrotask(() => {
      for (const listen of [...listeners]) listen(one);
    });
  const waiting: EarOrder[] = [];
  let service: EarService | null = null;
  loading.then((loaded) => {
    if (!loaded.ok) return report({ type: "unusable", code: loaded.code, message: loaded.message });
    const { digest, descriptionDigest, file } = loaded.model;
    service = new EarService(loaded.model, report);
    report({ type: "ready", digest, descriptionDigest, trained: file.trained, isFast: service.isFast });
    for (const order of waiting.splice(0)) service.take(order);
  });
  return {
    tell(order) {
      if (service === null) waiting.push(order);
      else service.take(order);
    },
    onReport(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      listeners.clear();
    },
  };
}
