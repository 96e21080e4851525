/** One line of a place, put otherwise by the studio: its fields as text, and the value they come to. Pure. */
import { type RecordKind, recordKinds } from "../../../due/retention";
import type { LineValue, PlaceLine } from "../../../places/line";
import { readWhole } from "../parts/seconds";

export const spans = ["days", "weeks", "months", "years"] as const;
export type SpanUnit = (typeof spans)[number];

export interface OverrideDraft {
  readonly kind: LineValue["kind"];
  /** Years, days, per cent, or how many of `unit`. */
  readonly number: string;
  readonly unit: SpanUnit;
  readonly words: string;
  readonly colour: string;
  readonly code: string;
  readonly route: string;
  readonly reason: string;
}

export type OverrideTrouble = "notANumber" | "missing" | "reason";

/** What a line is about, from its value or, where that is open, from its name. */
export function kindOf(line: PlaceLine): LineValue["kind"] {
  if (line.value) return line.value.kind;
  if (line.id === "age.minimum") return "age";
  if (line.id === "test.biological") return "biological-test";
  if (recordOf(line)) return "keep";
  return line.id.startsWith("waste.") ? "waste" : "words";
}

function recordOf(line: PlaceLine): RecordKind | undefined {
  if (line.value?.kind === "keep") return line.value.record;
  return line.id.startsWith("keep.") ? recordKinds.find((kind) => line.id === `keep.${kind}`) : undefined;
}

export function overrideDraftOf(line: PlaceLine): OverrideDraft {
  const { value } = line;
  const empty: OverrideDraft = {
    ...{ kind: kindOf(line), number: "", unit: "years", words: "", colour: "", code: "", route: "", reason: "" },
  };
  switch (value?.kind) {
    case "age":
      return { ...empty, number: String(value.minimumYears) };
    case "keep":
      return { ...empty, ...spanDraft(value.keep) };
    case "biological-test":
      return { ...empty, ...spanDraft(value.every) };
    case "report":
      return { ...empty, number: String(value.workingDays), words: value.what };
    case "waste":
      return { ...empty, words: value.stream, colour: value.colour, code: value.code ?? "", route: value.route };
    case "pack-label":
      return { ...empty, words: value.carries.join(", ") };
    case "sharps-fill":
      return { ...empty, number: String(Math.round(value.share * 100)) };
    case "words":
      return { ...empty, words: value.words };
    default:
      return { ...empty, unit: empty.kind === "biological-test" ? "weeks" : "years" };
  }
}

type Span = Extract<LineValue, { kind: "keep" }>["keep"];

function spanDraft(span: Span): Pick<OverrideDraft, "number" | "unit"> {
  const unit = spans.find((one) => one in span) ?? "days";
  return { number: String(Object.values(span)[0] ?? ""), unit };
}

const mostOf: Readonly<Record<SpanUnit, number>> = { days: 36_500, weeks: 5000, months: 1200, years: 100 };
const carried = ["date", "initials", "indicator"] as const;

export type FromOverride =
  | { readonly ok: true; readonly value: LineValue; readonly reason: string }
  | { readonly ok: false; readonly trouble: OverrideTrouble };

export function overrideFrom(draft: OverrideDraft, line: PlaceLine): FromOverride {
  const value = valueFrom(draft, line);
  if (value === "notANumber" || value === "missing") return { ok: false, trouble: value };
  const reason = draft.reason.trim();
  return reason === "" ? { ok: false, trouble: "reason" } : { ok: true, value, reason };
}

function valueFrom(draft: OverrideDraft, line: PlaceLine): LineValue | "notANumber" | "missing" {
  const number = readWhole(draft.number);
  const within = (least: number, most: number): number | null =>
    number !== null && number >= least && number <= most ? number : null;
  const span = (): Span | null => {
    const count = within(1, mostOf[draft.unit]);
    return count === null ? null : ({ [draft.unit]: count } as Span);
  };
  const words = draft.words.trim();
  switch (draft.kind) {
    case "age": {
      const minimumYears = within(0, 30);
      return minimumYears === null ? "notANumber" : { kind: "age", minimumYears };
    }
    case "keep": {
      const keep = span();
      const from = line.value?.kind === "keep" ? line.value.from : "record date";
      return keep ? { kind: "keep", record: recordOf(line) ?? "client-record", keep, from } : "notANumber";
    }
    case "biological-test": {
      const every = span();
      const alsoAfter = line.value?.kind === "biological-test" ? line.value.alsoAfter : [];
      return every ? { kind: "biological-test", every, alsoAfter } : "notANumber";
    }
    case "report": {
      const workingDays = within(1, 60);
      if (words === "") return "missing";
      return workingDays === null ? "notANumber" : { kind: "report", what: words, workingDays };
    }
    case "waste": {
      const [colour, route] = [draft.colour.trim(), draft.route.trim()];
      if (words === "" || colour === "" || route === "") return "missing";
      return { kind: "waste", stream: words, colour, code: draft.code.trim() || null, route };
    }
    case "pack-label":
      return { kind: "pack-label", carries: carried.filter((one) => words.toLowerCase().includes(one)) };
    case "sharps-fill": {
      const percent = within(1, 100);
      return percent === null ? "notANumber" : { kind: "sharps-fill", share: percent / 100 };
    }
    case "words":
      return words === "" ? "missing" : { kind: "words", words };
  }
}
