/** Every sentence of the sums in English. Another language has the same shape, or does not compile. */
import { dueEn } from "./enDue";
import { keptEn } from "./enKept";
import { mixingEn } from "./enMixing";
import { placesEn } from "./enPlaces";
import { shelfEn } from "./enShelf";
import { steriliserEn } from "./enSteriliser";

export const sumsEn = {
  notANumber: (typed: string) => `${typed} is not a plain number such as 0.5 or 12.`,
  mixing: mixingEn,
  due: dueEn,
  kept: keptEn,
  places: placesEn,
  shelf: shelfEn,
  steriliser: steriliserEn,
};
