/** Teaching as its page sees it, which opens only once the companion is here: handed through to it. */
import type { TeachModel, TeachNow } from "../screen/voice/teachModel";

const nothingYet: TeachNow = {
  state: "idle",
  ask: null,
  phrasesDone: 0,
  phrases: 0,
  lastTrouble: null,
  trouble: null,
  taught: null,
  learntMs: null,
  canUndo: false,
};

export function lateTeaching(here: () => TeachModel | null): TeachModel {
  return {
    get now() {
      return here()?.now ?? nothingYet;
    },
    subscribe: (listen) => here()?.subscribe(listen) ?? (() => undefined),
    begin: (address, commands, ownWords) => here()?.begin(address, commands, ownWords),
    enough: () => here()?.enough(),
    cancel: () => here()?.cancel(),
    undo: () => here()?.undo(),
    forget: () => here()?.forget(),
    saveFile: () => here()?.saveFile(),
  };
}
