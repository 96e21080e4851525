/** Scripted twins of the microphone and of the ear: they say what a test or a demonstration tells them to. */
import type { SoundEvent, SoundSource } from "../../microphone/vocabulary";
import type { EarOrder, EarPort, EarReport } from "./port";

export function scriptedSource() {
  let listening: ((event: SoundEvent) => void) | null = null;
  const source: SoundSource = {
    open(_track, listen) {
      listening = listen;
      return {
        close() {
          if (listening !== listen) return;
          listening = null;
          queueMicrotask(() => listen({ type: "closed" }));
        },
      };
    },
  };
  return {
    ...source,
    processing: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    say(event: SoundEvent) {
      listening?.(event);
    },
  };
}

export function scriptedEar() {
  const listeners = new Set<(report: EarReport) => void>();
  const orders: EarOrder[] = [];
  const port: EarPort = {
    tell(order) {
      orders.push(order);
    },
    onReport(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      listeners.clear();
    },
  };
  return {
    ...port,
    orders,
    report(report: EarReport) {
      queueMicrotask(() => {
        for (const listen of [...listeners]) listen(report);
      });
    },
  };
}

/** Everything that was queued has happened. */
export const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 0));
