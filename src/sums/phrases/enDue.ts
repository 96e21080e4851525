/** Due times, ages and how long records are kept, in English. */
import type { RecordKind, RetentionDue, RetentionRule } from "../../due/retention";

const units: Record<"hours" | "days" | "weeks" | "months" | "years", readonly [one: string, many: string]> = {
  hours: ["hour", "hours"],
  days: ["day", "days"],
  weeks: ["week", "weeks"],
  months: ["month", "months"],
  years: ["year", "years"],
};

const records: Record<RecordKind, string> = {
  "client-record": "client record",
  "health-questionnaire": "health questionnaire",
  "steriliser-log": "steriliser log",
  "biological-test-log": "biological test log",
  "pre-sterilised-purchase": "pre sterilised purchase",
  "training-record": "training record",
  "staff-medical-record": "staff medical record",
  "sharps-injury-log": "sharps injury log",
  "hazardous-waste-note": "hazardous waste note",
  "waste-transfer-note": "waste transfer note",
};

const startsFrom: Record<RetentionRule["from"], string> = {
  "record date": "record date",
  "end of employment": "end of employment",
  use: "use",
  "end of the year": "end of the year",
};

const keeps: Record<RetentionDue["state"], string> = {
  keep: "keep",
  "may be deleted": "may be deleted",
  "keep: no rule known": "keep: no rule known",
};

export const dueEn = {
  undated: "undated",
  fromMemory: "from memory",
  routes: { percutaneous: "percutaneous", "mucous membrane": "mucous membrane" },
  ifNotProtected: (percent: string) => `${percent}, if not protected`,
  span: (count: number, unit: keyof typeof units) => `${count} ${units[unit][count === 1 ? 0 : 1]}`,
  records,
  startsFrom,
  keeps,
  notKnownHere: "not known here",
  badDate: (typed: string) => `${typed} is not a date such as 2026-11-25.`,
  badTime: (typed: string) => `${typed} is not a time such as 2026-11-25T07:40 or 2026-11-25T06:40:00Z.`,
  bornLater: (born: string) => `A date of birth of ${born} has not come yet.`,
  ageUnlikely: (born: string, years: number) => `A date of birth of ${born} makes ${years} years; check it.`,
  ageNotKnown: (place: string) => `${place} gives no minimum age here; fill it in first.`,
  oldEnough: (years: number, on: string, least: number) => `${years} years on ${on}: old enough (${least}).`,
  tooYoung: (years: number, on: string, least: number, until: string) =>
    `${years} years on ${on}: not old enough (${least}) until ${until}.`,
};
