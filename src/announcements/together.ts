/** What falls together is said together: "Chair and lamp: time. Stayed wet?" */
import type { Phrasebook } from "./phrasebook";
import { clockUtterance } from "./sayClock";
import type { ItemPart, Utterance } from "./utterance";

const itemsOf = (utterances: readonly Utterance[]): readonly ItemPart[] => {
  const items = utterances.flatMap(({ parts }) => parts.filter((part) => part.kind === "item"));
  return items.filter((item, place) => items.findIndex(({ id }) => id === item.id) === place);
};

/** One utterance for each moment of the clocks, at the place of its first; all else as it was. */
export function together(book: Phrasebook, utterances: readonly Utterance[]): readonly Utterance[] {
  return utterances.flatMap((utterance, place): readonly Utterance[] => {
    const moment = utterance.merge;
    if (moment === undefined) return [utterance];
    const same = utterances.filter(({ merge }) => merge === moment);
    if (same[0] !== utterances[place]) return [];
    return same.length === 1
      ? [utterance]
      : [{ ...clockUtterance(book, moment, itemsOf(same)), solicited: same.every((u) => u.solicited) }];
  });
}
