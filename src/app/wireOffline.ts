/** The service worker: keeps everything for working offline, and holds a new version back until it is asked for. */
import { registerSW } from "virtual:pwa-register";

export type OfflineState = "no" | "ready" | "waiting";

export function wireOffline() {
  let state: OfflineState = navigator.serviceWorker?.controller ? "ready" : "no";
  let tell: (state: OfflineState) => void = () => undefined;
  const become = (next: OfflineState) => {
    state = next;
    tell(state);
  };
  const activate = registerSW({
    onOfflineReady: () => become("ready"),
    onNeedRefresh: () => become("waiting"),
  });
  return {
    onState(listen: (state: OfflineState) => void): void {
      tell = listen;
      listen(state);
    },
    /** Loads the version that waits. Offered on the prepare screen only, never during a session. */
    update: () => void activate(true),
  };
}
