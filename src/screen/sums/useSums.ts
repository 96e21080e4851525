/** What the sums say in the language of the screen. Fetched with their pages, not before. */
import { type SumPhrases, sumPhrases } from "../../sums/phrases";
import { useShared } from "../useModel";

export const useSums = (): SumPhrases => sumPhrases(useShared().language);
