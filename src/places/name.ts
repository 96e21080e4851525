/** A bundled place and its lines by the words of a language. A studio's own words stand as they were written. */
import type { SumPhrases } from "../sums/phrases";
import type { PlaceId, PlaceTextId, SubjectId } from "../sums/phrases/enPlaces";
import { placesEn } from "../sums/phrases/enPlaces";
import type { PlaceProfile } from "./line";

const has = <Id extends string>(table: Readonly<Record<Id, string>>, id: string): id is Id => Object.hasOwn(table, id);

/** In English a profile's own name stands, for a studio may have kept one. */
export const placeName = (place: PlaceProfile, { places }: SumPhrases): string =>
  has<PlaceId>(places.names, place.id) ? places.names[place.id] : place.name;

export const subjectName = (lineId: string, { places }: SumPhrases): string =>
  has<SubjectId>(places.subjects, lineId) ? places.subjects[lineId] : lineId.replaceAll(/[.-]/g, " ");

const bundled = new Map(Object.entries(placesEn.texts).map(([id, english]) => [english, id as PlaceTextId]));

/** @param english as a line keeps it. */
export function placeText(english: string, { places }: SumPhrases): string {
  const id = bundled.get(english);
  return id === undefined ? english : places.texts[id];
}
