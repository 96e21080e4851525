/** Language tags: whether one is well formed (BCP 47), whether the phrase model speaks it, and the worst of several. */
import type { AvailabilityStatus } from "./vocabulary";

export function isLanguageTag(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}

/** The phrases are English, in whatever region. */
export const isEnglish = (tag: string): boolean => isLanguageTag(tag) && new Intl.Locale(tag).language === "en";

const fromBestToWorst: readonly AvailabilityStatus[] = ["available", "downloading", "downloadable", "unavailable"];

/** No languages at all is "unavailable", as the draft says. */
export function worst(statuses: readonly AvailabilityStatus[]): AvailabilityStatus {
  const ranks = statuses.map((status) => fromBestToWorst.indexOf(status));
  return fromBestToWorst[statuses.length === 0 ? 3 : Math.max(...ranks)] ?? "unavailable";
}
