/** English numbers, durations and spelling, as spoken. */
import { codeWords } from "./codeWords";

const small = [
  ..."zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen".split(" "),
  ..."sixteen seventeen eighteen nineteen".split(" "),
];
const tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/** @param value 0..999, whole; outside that it is our mistake and throws. */
export function numberWords(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value > 999) throw new RangeError(`no words for ${value}`);
  if (value < 20) return small[value] ?? "";
  if (value < 100) return [tens[Math.floor(value / 10)], small[value % 10 || -1]].filter(Boolean).join("-");
  const rest = value % 100;
  return `${small[Math.floor(value / 100)]} hundred${rest ? ` and ${numberWords(rest)}` : ""}`;
}

const halfMinuteMs = 30_000;

/**
 * Rounded up: to ten seconds under a minute, half minutes to ten minutes, whole minutes to an hour.
 * "forty seconds", "two and a half minutes", "twelve minutes".
 */
export function durationWords(ms: number): string {
  if (ms <= 50_000) return `${numberWords(Math.max(1, Math.ceil(ms / 10_000)) * 10)} seconds`;
  if (ms > 3_600_000) return "more than an hour";
  const halves = ms <= 600_000 ? Math.ceil(ms / halfMinuteMs) : 2 * Math.ceil(ms / (2 * halfMinuteMs));
  if (halves === 2) return "one minute";
  const whole = numberWords(Math.floor(halves / 2));
  return halves % 2 ? `${whole} and a half minutes` : `${whole} minutes`;
}

const digits = Object.fromEntries(small.slice(0, 10).map((word, digit) => [String(digit), word]));

/** Plain English digits, which artists know. */
export const spellingWords: Readonly<Record<string, string>> = {
  ...codeWords,
  ...digits,
  "-": "dash",
  "/": "slash",
  ".": "dot",
};

/** Plain letters, for a word that nothing else can say. */
export const letterWords: Readonly<Record<string, string>> = {
  ...Object.fromEntries([..."abcdefghijklmnopqrstuvwxyz"].map((letter) => [letter, letter.toUpperCase()])),
  ...digits,
};
