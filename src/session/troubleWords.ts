/** Why a file is no protocol, in the languages that are spoken: what was found there, what belongs there, how to mend it. */
import type { SpokenLanguage } from "../announcements/phrasebooks";
import { troubleEs } from "./troubleWordsEs";

/** What the schema measured. */
export type Measured = "text" | "list" | "number";

/** What may stand in a field, by the schema's own name for it. */
const kinds = {
  string: "a text in quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list in square brackets",
  object: "an object in braces",
  record: "an object in braces",
};
export type FieldKind = keyof typeof kinds;

/** What stands there, where it cannot be quoted. */
const found = { nothing: "nothing (null)", list: "a list", object: "an object" };
export type FoundKind = keyof typeof found;

const measures: Record<Measured, readonly [least: string, most: string]> = {
  text: ["This text is too short", "This text is too long"],
  list: ["This list is too short", "This list is too long"],
  number: ["This number is too small", "This number is too large"],
};

export const troubleEn = {
  kinds,
  found,
  tooLarge: (most: number) =>
    `The file is larger than ${most} characters. A protocol of 400 steps has a tenth of that.`,
  notJson: "The file is not JSON. Export the protocol again and choose that file.",
  tooDeep: "The file is nested too deeply to be a protocol. Export the protocol again.",
  missing: (belongs: string | null) => `This field is missing.${belongs ? ` It is ${belongs}.` : ""} Add it.`,
  wrongKind: (is: string, belongs: string) => `Here stands ${is}, where ${belongs} belongs. Correct it.`,
  unknownField: (key: string, isOrder: boolean) =>
    `A protocol has no field ${key} here. Take it out.${isOrder ? " Steps are done in the order of their list." : ""}`,
  onlyThese: (is: string, values: string) => `Here stands ${is}. It may only be: ${values}. Correct it.`,
  noneOf: (is: string, values: string | null) =>
    `Here stands ${is}, which is none of those that a protocol knows.${values ? ` It may only be: ${values}.` : ""} Correct it.`,
  atLeast: (what: Measured, least: string) => `${measures[what][0]}: at least ${least}. Correct it.`,
  atMost: (what: Measured, most: string) => `${measures[what][1]}: at most ${most}. Correct it.`,
  noDay: (is: string) => `${is} is not a day of the calendar. Write it like 2026-11-25.`,
  malformed: (is: string, why: string) => `${is} is not well formed: ${why}. Correct it.`,
  other: (why: string) => `${why}. Correct it.`,
  twoItems: (id: string) => `Two items are called "${id}".`,
  twoProducts: (id: string) => `Two products are "${id}".`,
  twoFlows: (event: string) => `The event "${event}" has two flows.`,
  twoSteps: (id: string) => `Two steps are called "${id}".`,
  ownName: (id: string) => `"${id}" begins like the companion's own steps. Give the step another id.`,
  noItem: (id: string) => `No item is called "${id}". Add it to "items".`,
  noItemOfStep: (id: string) => `No item is called "${id}". Add it to "items" or correct the step.`,
  noProduct: (id: string) => `No product is called "${id}". Add it to "products".`,
  noDisinfectant: (id: string) => `"${id}" is no surface disinfectant. Only one of those makes a thing clean.`,
  noAntiseptic: (id: string) => `"${id}" is no skin antiseptic. Nothing else goes on skin.`,
};

/** Another language has the same shape, or does not compile. */
export type TroubleWords = typeof troubleEn;
/** A trouble, whatever the language. */
export type TroubleSays = (words: TroubleWords) => string;

const languages: Readonly<Record<SpokenLanguage, TroubleWords>> = { en: troubleEn, es: troubleEs };
export const troubleWords = (language: SpokenLanguage): TroubleWords => languages[language];
