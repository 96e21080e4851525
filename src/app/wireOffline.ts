/** The service worker: keeps everything for working offline, and holds a new version back until it is asked for. */
import { registerSW } from "virtual:pwa-register";
import type { Model } from "../screen/model";

export type OfflineState = "no" | "ready" | "waiting";

/**
 * After so long the page is loaded anew even if the new version did not take over by itself: Chromium leaves it waiting
 * where something is fetched in the moment it is asked, until the page that asked is gone (Chromium 156, tried).
 */
const takeOverMs = 2_000;

export function wireOffline() {
  let state: OfflineState = navigator.serviceWorker?.controller ? "ready" : "no";
  let tell: (state: OfflineState) => void = () => undefined;
  let activate: ReturnType<typeof registerSW> = async () => undefined;
  let isFree = () => true;
  let isReloadDue = false;

  const become = (next: OfflineState) => {
    state = next;
    tell(state);
  };
  const reloadIfFree = (): void => {
    if (isReloadDue && isFree()) location.reload();
  };

  return {
    /** Begins to keep everything: after what is wanted at once, for it comes over the same network. */
    keep(): void {
      activate = registerSW({
        // Asked for here, or in another window: a session is never broken off by it.
        onNeedReload() {
          isReloadDue = true;
          reloadIfFree();
        },
        onOfflineReady: () => become("ready"),
        onNeedRefresh: () => become("waiting"),
      });
    },
    onState(listen: (state: OfflineState) => void): void {
      tell = listen;
      listen(state);
    },
    /** From now on a page with a session is loaded anew only after it. */
    spare(model: Pick<Model, "view" | "subscribe">): void {
      isFree = () => model.view.at !== "session" && model.view.at !== "record";
      model.subscribe(reloadIfFree);
    },
    /** Loads the version that waits. Offered on the prepare screen only, never during a session. */
    update(): void {
      void activate(true);
      setTimeout(() => {
        isReloadDue = true;
        reloadIfFree();
      }, takeOverMs);
    },
  };
}
