/** Teaching as its page sees it, which opens only once the companion is here: handed through to it. */
import { notTeaching, type TeachModel } from "../screen/voice/teachModel";

export function lateTeaching(here: () => TeachModel | null): TeachModel {
  return {
    get now() {
      return here()?.now ?? notTeaching;
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
