/** How this device shows itself and speaks, whoever works at it. */
import { type SpokenLanguage, spokenLanguages } from "../../announcements/languages";

/** `device`: as the system wishes. `contrast`: the strongest contrast, dark or light as the system wishes. */
export const themes = ["device", "light", "dark", "contrast"] as const;
export type Theme = (typeof themes)[number];

export interface Settings {
  readonly language: SpokenLanguage;
  readonly theme: Theme;
}

/** @param preferred the device's languages, the first the dearest: "es-MX", "en". */
export function firstSettings(preferred: readonly string[]): Settings {
  const known = preferred.flatMap((tag) =>
    spokenLanguages.filter((language) => tag.toLowerCase().startsWith(language)),
  );
  return { language: known[0] ?? "en", theme: "device" };
}
