/** Microphone and speaker tried on the prepare screen, before any session: the app speaks for itself, without a queue. */
import { bookFor } from "../announcements/phrasebooks";
import { sayEarTrouble, saySoundCheck } from "../announcements/sayNotice";
import { textOf, type Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { type AddressWord, type CommandId, commandIds } from "../intent/phrases";
import { microphone } from "../microphone";
import type { PrepareView } from "../screen/model";
import type { Hearing } from "./wireHearing";

/** Turns of a session count from one; these stand far above them. */
const firstTurn = 1_000_000;

export function soundTrial(voice: Voice, hearing: Hearing, change: (part: Partial<PrepareView>) => void) {
  const book = bookFor("en");
  let turn = firstTurn;

  const say = (utterance: Utterance): void => {
    turn += 1;
    change({ speaking: textOf(utterance) });
    voice.speak(turn, utterance);
  };
  voice.onEnded((ended) => {
    if (ended === turn) change({ speaking: null });
  });
  hearing.condition.subscribe(() => change({ ear: hearing.condition.now }));

  return {
    speaker: () => say(saySoundCheck(book)),
    microphone(isOn: boolean, address: AddressWord): void {
      if (!isOn) {
        hearing.stop();
        return;
      }
      hearing.allow(new Set<CommandId>(commandIds));
      hearing.listen(microphone(), address, {
        heard: (heard) => {
          if (heard.kind === "understood") change({ lastHeard: heard.command });
        },
        talk: () => undefined,
        lost: (because) =>
          say(sayEarTrouble(book, because === "denied" ? "denied" : because === "no-device" ? "none" : "lost")),
        back: () => undefined,
      });
    },
  };
}
