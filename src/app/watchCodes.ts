/** Opens the camera where the step takes up a pack, by itself or when asked, and tells the session what is held up to it. */

import type { SessionState } from "../../machines/session/decide";
import { lotsHere } from "../../machines/session/lookUp";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { asEvent } from "../barcode/asEvent";
import type { CodeCamera } from "../barcode/codeCamera";
import { type HeldUp, lookAt, nothingHeld } from "../barcode/heldUp";

export interface WatchCodes {
  readonly isOpen: boolean;
  /** The artist asks for it: open until no code is wanted any more. */
  open(state: SessionState): void;
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

/** @param byItself opens wherever a code is wanted; else only when asked. */
export function watchCodes(camera: CodeCamera, byItself: boolean, tell: (event: SessionEvent) => void): WatchCodes {
  let isOpen = false;
  let isAsked = false;
  let held: HeldUp = nothingHeld;
  let year = 0;
  const look = (state: SessionState): void => {
    year = Number(state.context.world.today.slice(0, 4));
    const isWanted = wantsCode(state);
    if (!isWanted) isAsked = false;
    const opens = isWanted && (byItself || isAsked);
    if (opens === isOpen) return;
    isOpen = opens;
    if (!opens) {
      camera.close();
      return;
    }
    held = nothingHeld;
    camera.open((codes, atMs) => {
      const { next, told } = lookAt(held, codes, atMs);
      held = next;
      if (told) tell(asEvent(told, year));
    });
  };
  return {
    get isOpen() {
      return isOpen;
    },
    open(state) {
      isAsked = true;
      look(state);
    },
    look,
    stop() {
      isOpen = false;
      isAsked = false;
      camera.close();
    },
  };
}
