/** Every sentence of the sums in Spanish. */
import type { SumPhrases } from ".";
import { dueEs } from "./esDue";
import { keptEs } from "./esKept";
import { mixingEs } from "./esMixing";
import { placesEs } from "./esPlaces";
import { shelfEs } from "./esShelf";
import { steriliserEs } from "./esSteriliser";

export const sumsEs: SumPhrases = {
  notANumber: (typed) => `${typed} no es un número, como 0.5 o 12.`,
  mixing: mixingEs,
  due: dueEs,
  kept: keptEs,
  places: placesEs,
  shelf: shelfEs,
  steriliser: steriliserEs,
};
