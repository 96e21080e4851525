/** The tour of the first run, one stop at a time; at some of them the artist is asked to try a phrase. */
import type { AddressWord } from "../intent/phrases";
import { fill, sentences } from "./fill";
import type { Phrasebook } from "./phrasebook";
import { askTake } from "./sayNotice";
import { type TourStop, triedAt } from "./tour";
import type { Utterance } from "./utterance";

export function sayTourStop(book: Phrasebook, stop: TourStop, address: AddressWord): Utterance {
  const tried = triedAt[stop];
  const asked = tried === null ? [] : askTake(book, address, tried).parts;
  return { key: "tour", parts: sentences(fill(book.tour[stop]), asked), urgency: "soon", solicited: true };
}
