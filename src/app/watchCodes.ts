/** Opens the camera while the step takes up a pack, and tells the session what is held up to it. */

import type { SessionState } from "../../machines/session/decide";
import { lotsHere } from "../../machines/session/lookUp";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { asEvent } from "../barcode/asEvent";
import type { CodeCamera } from "../barcode/codeCamera";
import { type HeldUp, lookAt, nothingHeld } from "../barcode/heldUp";

export interface WatchCodes {
  /** After every change of the session. */
  look(state: SessionState): void;
  stop(): void;
}

/** A pack is being taken up, and no other question stands in between. */
export function wantsCode(state: SessionState): boolean {
  const { world } = state.context;
  if (world.paused || world.phase === "closed" || world.exposure === "firstAid") return false;
  const isOpen = state.matches({ conversation: "open" }) || state.matches({ conversation: { readBack: "lot" } });
  return isOpen && lotsHere(state.context).length > 0;
}

export function watchCodes(camera: CodeCamera, tell: (event: SessionEvent) => void): WatchCodes {
  let isOpen = false;
  let held: HeldUp = nothingHeld;
  let year = 0;
  return {
    look(state) {
      year = Number(state.context.world.today.slice(0, 4));
      const wanted = wantsCode(state);
      if (wanted === isOpen) return;
      isOpen = wanted;
      if (!wanted) return camera.close();
      held = nothingHeld;
      camera.open((codes, atMs) => {
        const { next, told } = lookAt(held, codes, atMs);
        held = next;
        if (told) tell(asEvent(told, year));
      });
    },
    stop() {
      isOpen = false;
      camera.close();
    },
  };
}
