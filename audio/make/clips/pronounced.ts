/** How a synthesiser must be written to, where it would misread the text. Only single letters and a few names. */
import type { SpokenLanguage } from "../../../src/announcements/phrasebooks";

const letters: Readonly<Record<string, string>> = {
  A: "ay",
  B: "bee",
  C: "see",
  D: "dee",
  E: "ee",
  F: "eff",
  G: "jee",
  H: "aitch",
  I: "eye",
  J: "jay",
  K: "kay",
  L: "ell",
  M: "em",
  N: "en",
  O: "oh",
  P: "pee",
  Q: "queue",
  R: "are",
  S: "ess",
  T: "tee",
  U: "you",
  V: "vee",
  W: "double you",
  X: "ex",
  Y: "why",
  Z: "zed",
  alfa: "alpha",
  juliett: "juliet",
};

/** espeak-ng names the letters of Spanish by itself; the code words keep their international sound. */
const spanishWords: Readonly<Record<string, string>> = {
  charlie: "charli",
  foxtrot: "fócstrot",
  juliett: "yúliet",
  mike: "maik",
  whiskey: "uíski",
  "x-ray": "ecsrey",
  yankee: "yanqui",
  zulu: "zulú",
};

export const pronounced: Readonly<Record<SpokenLanguage, (text: string) => string>> = {
  en: (text) => letters[text] ?? text,
  es: (text) => spanishWords[text] ?? text,
};
