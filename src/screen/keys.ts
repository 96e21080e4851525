/**
 * Keys during a session, and what each gives. Foot pedals arrive as keys: page keys are what most send. Letters can be
 * switched off for those who dictate to their device; the pedal's keys cannot.
 */
import type { CommandId } from "../intent/phrases";

export interface KeyStroke {
  readonly key: string;
  readonly repeat: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

export interface KeyMeaning {
  readonly command: CommandId;
  readonly by: "pedal" | "keyboard";
}

const pedal: Readonly<Record<string, CommandId>> = {
  PageDown: "done",
  PageUp: "back",
  Home: "yes",
  End: "no",
  F8: "again",
  F9: "accident",
};

const plain: Readonly<Record<string, CommandId>> = { Enter: "done", " ": "done" };

const letters: Readonly<Record<string, CommandId>> = {
  a: "accident",
  b: "back",
  c: "confirm",
  d: "note",
  e: "scan",
  f: "freshGloves",
  g: "tornGlove",
  h: "hush",
  i: "mayITouch",
  k: "skip",
  l: "howLong",
  m: "whatLeft",
  n: "no",
  o: "options",
  p: "pause",
  q: "close",
  r: "again",
  s: "applied",
  t: "finish",
  u: "undo",
  v: "resume",
  w: "whatNow",
  x: "wiped",
  y: "yes",
};

/** Takes something out of use: it has no phrase, so it is no command. */
export const outOfUseKey = "z";
export const asksOutOfUse = (stroke: KeyStroke, withLetters: boolean): boolean =>
  withLetters &&
  !(stroke.repeat || stroke.ctrlKey || stroke.altKey || stroke.metaKey) &&
  stroke.key.toLowerCase() === outOfUseKey;

/** @returns null for a key that means nothing here, or that a held key repeats. */
export function keyMeaning(stroke: KeyStroke, withLetters: boolean): KeyMeaning | null {
  if (stroke.repeat || stroke.ctrlKey || stroke.altKey || stroke.metaKey) return null;
  const fromPedal = pedal[stroke.key];
  if (fromPedal) return { command: fromPedal, by: "pedal" };
  const fromKeyboard = plain[stroke.key] ?? (withLetters ? letters[stroke.key.toLowerCase()] : undefined);
  return fromKeyboard ? { command: fromKeyboard, by: "keyboard" } : null;
}

/** Keys by command, as the screen lists them. */
export function keysOf(command: CommandId, withLetters: boolean): readonly string[] {
  const from = (table: Readonly<Record<string, CommandId>>) =>
    Object.entries(table)
      .filter(([, c]) => c === command)
      .map(([key]) => (key === " " ? "Space" : key.length === 1 ? key.toUpperCase() : key));
  return [...from(pedal), ...from(plain), ...(withLetters ? from(letters) : [])];
}

/** Every command that has a key, in the order of the page: pedal first. */
export const keyedCommands: readonly CommandId[] = [
  ...new Set([...Object.values(pedal), ...Object.values(plain), ...Object.values(letters)]),
];
