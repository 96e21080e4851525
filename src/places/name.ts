/** A bundled place and its lines by the words of a language. A studio's own words stand as they were written. */
import type { SumPhrases } from "../sums/phrases";
import type { PlaceId, PlaceSourceId, PlaceTextId, SubjectId } from "../sums/phrases/enPlaces";
import { placesEn } from "../sums/phrases/enPlaces";
import type { PlaceProfile } from "./line";

const has = <Id extends string>(table: Readonly<Record<Id, string>>, id: string): id is Id => Object.hasOwn(table, id);

/** In English a profile's own name stands, for a studio may have kept one. */
export const placeName = (place: PlaceProfile, { places }: SumPhrases): string =>
  has<PlaceId>(places.names, place.id) ? places.names[place.id] : place.name;

export const subjectName = (lineId: string, { places }: SumPhrases): string =>
  has<SubjectId>(places.subjects, lineId) ? places.subjects[lineId] : lineId.replaceAll(/[.-]/g, " ");

const idsOf = <Id extends string>(table: Readonly<Record<Id, string>>) =>
  new Map(Object.entries<string>(table).map(([id, english]) => [english, id as Id]));
const textIds = idsOf<PlaceTextId>(placesEn.texts);
const sourceIds = idsOf<PlaceSourceId>(placesEn.sources);

/** @param english as a line keeps it. */
export function placeText(english: string, { places }: SumPhrases): string {
  const id = textIds.get(english);
  return id === undefined ? english : places.texts[id];
}

/** A citation stands as it is called. @param english as a line keeps it. */
export function sourceText(english: string, { places }: SumPhrases): string {
  const id = sourceIds.get(english);
  return id === undefined ? english : places.sources[id];
}
