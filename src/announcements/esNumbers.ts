/** Spanish numbers, durations and spelling, as spoken. */
import { codeWords } from "./codeWords";

const small = [
  ..."cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince dieciséis".split(" "),
  ..."diecisiete dieciocho diecinueve veinte veintiuno veintidós veintitrés veinticuatro veinticinco".split(" "),
  ..."veintiséis veintisiete veintiocho veintinueve".split(" "),
];
const tens = ["", "", "", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"];
const hundreds = [
  ..." ciento doscientos trescientos cuatrocientos quinientos seiscientos".split(" "),
  ..."setecientos ochocientos novecientos".split(" "),
];

/** @param value 0..999, whole; outside that it is our mistake and throws. */
export function numberWords(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value > 999) throw new RangeError(`no words for ${value}`);
  if (value < 30) return small[value] ?? "";
  if (value < 100) {
    const ten = tens[Math.floor(value / 10)] ?? "";
    return value % 10 ? `${ten} y ${small[value % 10]}` : ten;
  }
  if (value === 100) return "cien";
  const rest = value % 100;
  return `${hundreds[Math.floor(value / 100)]}${rest ? ` ${numberWords(rest)}` : ""}`;
}

/** Before a masculine noun: "un minuto", "veintiún minutos", "treinta y un minutos". */
const before = (words: string): string => words.replace(/veintiuno$/, "veintiún").replace(/uno$/, "un");

const halfMinuteMs = 30_000;

/**
 * Rounded up: to ten seconds under a minute, half minutes to ten minutes, whole minutes to an hour.
 * "cuarenta segundos", "dos minutos y medio", "doce minutos".
 */
export function durationWords(ms: number): string {
  if (ms <= 50_000) return `${numberWords(Math.max(1, Math.ceil(ms / 10_000)) * 10)} segundos`;
  if (ms > 3_600_000) return "más de una hora";
  const halves = ms <= 600_000 ? Math.ceil(ms / halfMinuteMs) : 2 * Math.ceil(ms / (2 * halfMinuteMs));
  const minutes = Math.floor(halves / 2);
  const whole = minutes === 1 ? "un minuto" : `${before(numberWords(minutes))} minutos`;
  return halves % 2 ? `${whole} y medio` : whole;
}

const digits = Object.fromEntries(small.slice(0, 10).map((word, digit) => [String(digit), word]));

export const spellingWords: Readonly<Record<string, string>> = {
  ...codeWords,
  ...digits,
  "-": "guion",
  "/": "barra",
  ".": "punto",
};

/** Plain letters, for a word that nothing else can say. */
export const letterWords: Readonly<Record<string, string>> = {
  ...Object.fromEntries([..."abcdefghijklmnñopqrstuvwxyz"].map((letter) => [letter, letter.toUpperCase()])),
  ...Object.fromEntries([..."áéíóúü"].map((letter) => [letter, letter.normalize("NFD").charAt(0).toUpperCase()])),
  ...digits,
};
