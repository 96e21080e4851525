/** The words of the studio's screens. Another language has the same shape, or does not compile. */
import type { sumsEn } from "./en";

export type SumWords = typeof sumsEn;
