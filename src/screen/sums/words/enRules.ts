/** The words of the screens about hands, due dates and places in English. */
import type { RecordKind } from "../../../due/retention";
import type { HandMethod } from "../../../hands/durations";
import type { HandWords } from "../../../hands/timer";

const methods: Record<HandMethod, string> = { wash: "Wash", rub: "Rub" };
const done: Record<HandMethod, string> = { wash: "Washed. Dry with a fresh towel.", rub: "Done. Let them dry." };
const startAgain = "Lost count. Begin again.";

export const handsEn = {
  ready: "Ready",
  seconds: (left: number) => `${left} s`,
  start: { wash: "Wash, 40 seconds", rub: "Rub, 30 seconds" },
  stop: "Stop",
  goOn: { wash: "Wash.", rub: "Rub until it is time, wet all along." },
  methods,
  /** Each word has a recorded clip. */
  spoken: { done, startAgain, secondsShort: "seconds short" },
  shown: (words: HandWords): string => {
    switch (words.code) {
      case "count":
        return `${words.seconds} seconds`;
      case "done":
        return done[words.method];
      case "start-again":
        return startAgain;
      case "short":
        return `Stopped ${words.shortS} seconds short. It does not count.`;
    }
  },
  which: "How long, and who says so",
  whichHint: "The sources differ. Forty seconds of washing meet them all. Visibly soiled hands are washed, not rubbed.",
  published: (method: string, leastS: number, mostS: number | null) =>
    mostS === null ? `${method}, ${leastS} s or more` : `${method}, ${leastS} to ${mostS} s`,
};

const recordKinds: Record<RecordKind, string> = {
  "client-record": "Client record",
  "health-questionnaire": "Health questionnaire",
  "steriliser-log": "Steriliser log",
  "biological-test-log": "Biological test log",
  "pre-sterilised-purchase": "Receipt for pre-sterilised items",
  "training-record": "Training record",
  "staff-medical-record": "Staff medical record",
  "sharps-injury-log": "Sharps injury log",
  "hazardous-waste-note": "Hazardous waste note",
  "waste-transfer-note": "Waste transfer note",
};

const byPlace = (place: string, isChosen: boolean): string =>
  isChosen ? `By the rules of ${place}.` : "No place is chosen yet. Choose one on the page Place.";

export const dueEn = {
  byPlace,
  exposure: "After a needlestick, cut or splash",
  exposureHint: "First aid and a clinician now. These times only say when it is late. Not medical advice.",
  exposedAt: "When it happened",
  exposedHint: (zone: string) => `On the clock here (${zone}).`,
  notYet: "That has not happened yet. Check the date and time.",
  standings: { "not yet open": "later", open: "in time", passed: "passed" },
  risk: "Published figures for the risk",
  riskNote: "They disagree, so all of them are here, each with its source.",
  age: "Old enough?",
  born: "Date of birth",
  bornHint: "From the document in your hand. It is not kept.",
  retention: "Until when records stay",
  kind: "Record",
  kinds: recordKinds,
  startsOn: "Its date",
  startsOnHint: "From when the rule counts: of the record, of use, or of leaving.",
  asked: "This one",
  session: (client: string) => `Client ${client}`,
  cycle: (id: string) => `Cycle ${id}`,
  keepUntil: (kind: string, until: string) => `${kind}, keep until ${until}`,
  onDevice: "On this device",
  noneOnDevice: "None yet.",
  nothingDeleted: "Nothing is deleted from here.",
  print: "Print the due list",
  sheet: {
    made: (day: string) => `Made on ${day}, from this device alone.`,
    columns: { record: "Record", kind: "Kind", state: "Now", until: "Keep until", done: "What was done, on, by" },
  },
};

export const placeEn = {
  which: "Where you work",
  whichHint: "The age gate, test dates and retention follow it.",
  place: "Place",
  notChosen: "not chosen: careful defaults",
  chosen: (name: string) => `place ${name}`,
  unsure: (marked: number, all: number) =>
    `${marked} of ${all} lines are not confirmed. Check those before you rely on them.`,
  lines: "Line by line",
  linesHint: "Each with its source and year. Any of them can be put otherwise.",
  marks: { "from memory": "from memory", "not confirmed": "not confirmed", "studio's own": "our own" },
  supplied: (says: string) => `As supplied: ${says}`,
  nothing: "nothing",
  change: "Change",
  changeOf: (says: string) => `Change: ${says}`,
  back: "As supplied",
  backOf: (says: string) => `As supplied, instead of: ${says}`,
  own: "our own line",
  fields: {
    ...{ age: "", keep: "", "biological-test": "", "sharps-fill": "" },
    ...{ report: "What is reported", waste: "Waste", "pack-label": "Each pack carries (date, initials, indicator)" },
    words: "What it says",
  },
  numbers: {
    ...{ waste: "", "pack-label": "", words: "" },
    ...{ age: "Minimum age, years", keep: "Keep for", "biological-test": "At least every" },
    ...{ report: "Within how many working days", "sharps-fill": "Close when full to, per cent" },
  },
  unit: "Unit",
  units: { days: "days", weeks: "weeks", months: "months", years: "years" },
  colour: "Colour of the container",
  code: "Waste code",
  route: "Where it goes",
  reason: "Why, or by whom",
  reasonHint: "Such as the paragraph of your own rules.",
  keepOwn: "Keep our own",
  cancel: "Leave it",
  troubles: {
    notANumber: "A whole number within reason is needed.",
    missing: "Something is still empty.",
    reason: "Say why, or by whose rule.",
  },
};
