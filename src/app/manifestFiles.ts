/** Names of the manifests and of the pictures in them. */
import type { SpokenLanguage } from "../announcements/languages";

export const manifestFile = (language: SpokenLanguage): string =>
  language === "en" ? "manifest.webmanifest" : `manifest.${language}.webmanifest`;

/** Screens that are shown before the app is installed; sizes in pixels. */
export const installPictures = [
  { screen: "station", form: "wide", width: 1280, height: 800 },
  { screen: "prepare", form: "wide", width: 1280, height: 800 },
  { screen: "station", form: "narrow", width: 360, height: 640 },
  { screen: "prepare", form: "narrow", width: 360, height: 640 },
] as const;

/** Within `public`. */
export const pictureFile = (
  { screen, form }: Pick<(typeof installPictures)[number], "screen" | "form">,
  language: SpokenLanguage,
): string => `pictures/install/${screen}.${form}.${language}.jpg`;
