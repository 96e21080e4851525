/** Language tags: whether one is well formed (BCP 47), which phrases it asks for, and the worst of several. */
import { type PhraseLanguage, phraseLanguages } from "../../intent/wording";
import type { AvailabilityStatus } from "./vocabulary";

export function isLanguageTag(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}

/** The language of the phrases that a tag asks for, in whatever region; null for one that has none. */
export function phraseLanguageOf(tag: string): PhraseLanguage | null {
  const language = isLanguageTag(tag) ? new Intl.Locale(tag).language : "";
  return phraseLanguages.find((known) => known === language) ?? null;
}

const fromBestToWorst: readonly AvailabilityStatus[] = ["available", "downloading", "downloadable", "unavailable"];

/** No languages at all is "unavailable", as the draft says. */
export function worst(statuses: readonly AvailabilityStatus[]): AvailabilityStatus {
  const ranks = statuses.map((status) => fromBestToWorst.indexOf(status));
  return fromBestToWorst[statuses.length === 0 ? 3 : Math.max(...ranks)] ?? "unavailable";
}
