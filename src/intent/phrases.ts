/**
 * Every phrase the companion listens for, in one place: an address word, then a command. Screens, speech, tests and
 * the training of the phrase model read this list. The order is the order of the model's outputs: append, never insert.
 */

/** One word for each station in a room, so that two stations do not answer to each other. */
export const addressWords = ["station", "workbench", "companion"] as const;
export type AddressWord = (typeof addressWords)[number];

/** Commands by id. The words are what the artist says after the address word. */
export const commands = {
  // Walking the list
  done: "completed",
  again: "say it again",
  back: "previous step",
  skip: "leave this one out",
  problem: "there's a problem",
  pause: "hold everything",
  resume: "resume the session",
  howLong: "how many minutes",
  whatNow: "where are we now",
  whatLeft: "what is remaining",
  // Answers
  yes: "affirmative",
  no: "definitely not",
  confirm: "I vouch for that",
  undo: "undo the mistake",
  // Why a step is left out
  reasonNotForClient: "doesn't apply here",
  reasonNoStock: "nothing in stock",
  reasonOwnDecision: "my own decision",
  // Wet surfaces
  applied: "sprayed all over",
  wiped: "wiped until dry",
  // What happens during the work
  freshGloves: "fresh pair of gloves",
  tornGlove: "finger poking through",
  tornBarrier: "barrier split open",
  newNeedle: "another needle",
  parkNeedle: "park it for later",
  moreInk: "extra colour",
  dropped: "fell on the floor",
  touched: "touched something else",
  photo: "taking a picture",
  machineSwap: "swap the machine",
  takeBreak: "time for a break",
  clientLeaves: "client walks outside",
  clientReturns: "welcome back in",
  clientUnwell: "dizzy and unwell",
  stopEarly: "ending for today",
  note: "dictate a memo",
  finish: "tattoo is finished",
  close: "seal the record",
  accident: "accident alarm",
  // The voice itself
  louder: "speak up a little",
  quieter: "softer than before",
  // Asked at any time
  mayITouch: "may I handle this",
  scan: "scan the packet",
  hush: "be quiet now",
  options: "list my choices",
} as const;

export type CommandId = keyof typeof commands;
export const commandIds = Object.keys(commands) as readonly CommandId[];
