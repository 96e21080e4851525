/**
 * The web app manifest (W3C) in each language: a device shows its names and shortcuts outside the page. Read at build time,
 * which writes one file for each language; the pictures are taken by `npm run pictures`.
 */
import { type SpokenLanguage, spokenLanguages } from "../announcements/languages";
import { addressOf, type PageId } from "../screen/pages/page";
import { wordsFor } from "../screen/words";
import { installPictures, manifestFile, pictureFile } from "./manifestFiles";

/** What somebody wants at once: the next client, a record for an inspector, a bottle to mix, the form after an accident. */
const shortcuts = ["prepare", "records", "mixing", "accident"] as const satisfies readonly PageId[];

const about: Readonly<Record<SpokenLanguage, string>> = {
  en: "A voice-driven, hands-free step companion for a tattoo station.",
  es: "Una compañera por voz, manos libres, paso a paso, para el puesto de tatuaje.",
};

const icons = [
  { src: "icons/mark.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
  { src: "icons/mark-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
  { src: "icons/mark-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
  { src: "icons/mark-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
] as const;

export function manifestFor(language: SpokenLanguage) {
  const { pages } = wordsFor(language);
  return {
    id: "/",
    name: "Gloveside",
    short_name: "Gloveside",
    description: about[language],
    lang: language,
    dir: "ltr" as const,
    categories: ["health", "business", "productivity"],
    start_url: "./",
    scope: "./",
    display: "standalone" as const,
    orientation: "any" as const,
    background_color: "#17112b",
    theme_color: "#17112b",
    icons: [...icons],
    shortcuts: shortcuts.map((page) => ({
      name: pages.names[page],
      description: pages.leads[page],
      url: `./${addressOf(page)}`,
      icons: [{ src: "icons/mark-192.png", sizes: "192x192", type: "image/png" }],
    })),
    screenshots: installPictures.map((picture) => ({
      src: pictureFile(picture, language),
      sizes: `${picture.width}x${picture.height}`,
      type: "image/jpeg",
      form_factor: picture.form,
      label: picture.screen === "station" ? wordsFor(language).session.clocks : pages.names.prepare,
    })),
  };
}

/** Of every language but the first, whose file the page names from the start. */
export const otherManifests = (): readonly { readonly fileName: string; readonly source: string }[] =>
  spokenLanguages
    .filter((language) => language !== "en")
    .map((language) => ({ fileName: manifestFile(language), source: JSON.stringify(manifestFor(language)) }));
