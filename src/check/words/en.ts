/** The words of a check in English. The rules' own words and sources stand in the catalogue. */
import { rules } from "../rules";
import type { CheckWords } from "./words";

export const checkEn: CheckWords = {
  language: "en",
  rules,
  rule: (words, source) => `Rule: ${words} Source: ${source}.`,
  reports: {
    freshGloves: "You ask for fresh gloves.",
    tornGlove: "You report a torn glove.",
    tornBarrier: "You report a torn barrier.",
    newNeedle: "You ask for a new needle.",
    parkNeedle: "You ask to park the needle.",
    moreInk: "You ask for more ink.",
    dropped: "You report something dropped.",
    touched: "You report something touched.",
    photo: "You ask to take a photo.",
    machineSwap: "You ask to swap machines.",
    takeBreak: "You take a break.",
    clientLeaves: "The client leaves for a moment.",
    clientReturns: "The client comes back.",
    clientUnwell: "The client feels unwell.",
    stopEarly: "The client stops early.",
    note: "You leave a note.",
  },
  step: (say, id) => `"${say}" (${id})`,
  does: (step) => `You do ${step}.`,
  doesMany: (many, first, last) => `You do ${many} steps as asked, from ${first} to ${last}.`,
  leavesOut: (step) => `You leave out ${step}, which the protocol allows.`,
  finishes: "You say that the work is finished.",
  hurt: "You report an accident, and choose to resume.",
  closes: "You close the session.",
  goesOn: (step) => `You do ${step}, and work goes on.`,
  asks: (step) => `Now it asks: ${step}.`,
  asksAbout: (step, things) => `Now it asks: ${step}, which meets: ${things}.`,
  atClose: {
    handsLast: "Your hands are not washed.",
    sharpsCounted: "The sharps are not all counted in.",
    reusableReady: "A reusable thing is still soiled.",
    criticalSterilised: "A critical thing is still soiled.",
    singleUseDiscarded: "A single-use thing still lies there.",
    noBarrierLeft: "A barrier is still on.",
    woundCovered: "The tattoo is not covered.",
    wipedAtTheEnd: "A surface was wetted and never wiped.",
  },
  notAsItShouldBe: "Something is not as it should be.",
  hands: "the hands",
  sharps: "the sharps",
  why: {
    tooMany: ({ rule, names, most }, told) =>
      `"${told.rule(rule)}" is not settled: ${told.things(names)} together have more than ${most} states.`,
    notFollowed: ({ rule }, told) => `"${told.rule(rule)}" is not settled: the chart does not follow the way to it.`,
    leftOpen: ({ rule, names }, told) =>
      `"${told.rule(rule)}" is not settled: a breach cannot be shown on the real chart, nor ruled out by watching ${told.things(names)}.`,
    notHeldBack: ({ step, finding }) =>
      `What "${step}" asks for could be unsafe and would not be held back (${finding}).`,
    onlyAPart: () => "Only a part was walked.",
    stopped: () => "The check was stopped.",
    notStarted: () => "The check could not be started. Load the page again.",
  },
};
