/** Where the studio works, by its own choice and lines. Apart from the rows: the profiles of all places weigh something. */
import type { PlaceProfile } from "../places/line";
import { placeById, withOverrides } from "../places/profiles";
import { onlyId } from "./kinds";
import type { Studio } from "./studio";

/** The place with the studio's own lines in it; as supplied where an override no longer fits. */
export function placeOf(studio: Studio): { place: PlaceProfile; isChosen: boolean; trouble: string | null } {
  const chosen = studio.place.get(onlyId);
  const supplied = placeById(chosen?.placeId ?? elsewhereId);
  if (!supplied.ok) return { ...placeOf({ ...studio, place: new Map() }), trouble: supplied.words };
  const own = withOverrides(supplied.value, chosen?.overrides ?? []);
  return own.ok
    ? { place: own.value, isChosen: chosen !== undefined, trouble: null }
    : { place: supplied.value, isChosen: true, trouble: own.words };
}

/** The profile of careful defaults, until a place is chosen. */
const elsewhereId = "elsewhere";
