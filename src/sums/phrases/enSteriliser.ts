/** The steriliser in English: the verdict on a cycle, what may be loaded, what a file lacks, what a pack says. */

import type { TestDue } from "../../steriliser/indicators";
import type { CycleVerdict } from "../../steriliser/judge";
import type { CycleClass, LoadKind } from "../../steriliser/load";

const verdicts: Record<CycleVerdict["code"], (band: string, minutes: string) => string> = {
  held: (band, minutes) => `Held ${band}: ${minutes} min unbroken`,
  "not-held": (band, minutes) => `NOT held: ${band} is needed, the longest unbroken stay was ${minutes} min`,
  "held-in-air": (_, minutes) => `NOT accepted: ${minutes} min in the band, but pressure shows air in the chamber`,
  "held-in-superheat": (_, minutes) => `NOT accepted: ${minutes} min in the band, but pressure shows superheat`,
};

const loads: Record<LoadKind, string> = {
  "naked-solid": "naked solid",
  "wrapped-solid": "wrapped solid",
  "naked-hollow": "naked hollow",
  "wrapped-hollow": "wrapped hollow",
  porous: "porous",
};

const because: Record<TestDue["because"], string> = {
  "never tested": "never tested",
  interval: "interval",
  installation: "installation",
  "major repair": "major repair",
};

export const steriliserEn = {
  verdicts,
  loads,
  because,
  beside: (minutes: string, method: string, reference: number, z: number) =>
    `F0 ${minutes} min (${method}, ${reference} °C, z ${z} K)`,
  airUnchecked: "No pressure recorded: air was not checked.",
  byHand: "As read by hand.",
  notAccepted: (why: string, verdict: string) => `NOT accepted: ${why} ${verdict}`,
  band: (range: string, minutes: number) => `${range} for ${minutes} min`,
  orAbove: (low: number) => `${low} °C or above`,
  nothingLoaded: "Nothing is named as loaded.",
  notInClass: (kind: string, cycleClass: CycleClass, why: string) =>
    `${kind} cannot go in a class ${cycleClass} cycle: ${why}.`,
  makerSilent: "the maker does not state it",
  nakedSolidOnly: "that class is for naked solid instruments only",
  chooseBand: "Choose the band that the cycle must hold.",
  mixedUp: "The coolest reading is hotter than the hottest.",
  numberNeeded: (name: string, low: number, high: number) => `${name}: a number from ${low} to ${high} is needed.`,
  biologicalTest: "biological test",
  weeklyHere: "biological test (weekly, CDC 2008: this place gives none)",
  bowieDickTest: "Bowie-Dick test",
  file: {
    tooLarge: "The file is larger than 5 MB; a cycle is a few hundred lines.",
    notCsv: "The file is not CSV: a quoted field is never closed.",
    empty: "The file holds no readings: a header row and one row a reading are needed.",
    tooMany: "The file holds more than 100 000 readings.",
    pressureKind: (column: string) => `${column} must say its unit and abs or gauge, such as pressure_bar_gauge.`,
    second: (column: string, of: "time" | "temperature" | "pressure") => `${column} is a second column for ${of}.`,
    timeNeeded: "A column time_s, time_min or time_ms is needed.",
    temperatureNeeded: "A column temperature_c or temperature_f is needed.",
    badValue: (line: number, cell: string, of: "time" | "temperature" | "pressure") =>
      `Line ${line}: ${cell} is not a ${of} a steam steriliser can show.`,
    timeBack: (line: number) => `Line ${line}: the time does not go forward.`,
  },
  pack: {
    goodThrough: (day: string) => `Good through ${day}, unless wet, torn or opened`,
    untilEvent: "Sterile until wet, torn or opened",
    ids: (pack: string, cycle: string) => `Pack ${pack}, cycle ${cycle}`,
    spoken: (contents: string, packed: string, good: string) => `${contents}, packed ${packed}. ${good}.`,
  },
};
