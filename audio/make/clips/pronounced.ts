/** How a synthesiser must be written to, where it would misread the text. Only single letters and a few names. */

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

export const pronounced = (text: string): string => letters[text] ?? text;
