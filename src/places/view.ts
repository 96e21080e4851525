/** A place profile as rows to show: what it says in words, its source and year, and a mark on what is not confirmed. */
import { showDuration } from "../due/duration";
import type { LineValue, PlaceLine, PlaceProfile } from "./line";
import { notLegalAdvice } from "./profiles";

export type PlaceRow = {
  readonly id: string;
  readonly says: string;
  readonly source: string;
  readonly year: string;
  /** null when confirmed; otherwise the words of the mark. */
  readonly mark: string | null;
};

export type PlaceView = {
  readonly name: string;
  readonly caution: string;
  readonly rows: readonly PlaceRow[];
  /** How many rows carry a mark. */
  readonly marked: number;
};

export function placeView(place: PlaceProfile): PlaceView {
  const rows = place.lines.map(row);
  return { name: place.name, caution: notLegalAdvice, rows, marked: rows.filter((r) => r.mark !== null).length };
}

function row(line: PlaceLine): PlaceRow {
  return {
    id: line.id,
    says: line.value ? says(line.value) : `${subjectOf(line.id)}: not known here; look it up and fill it in`,
    source: line.source,
    year: line.year === null ? "undated" : String(line.year),
    mark: line.status === "confirmed" ? null : line.status,
  };
}

/** What a line without a value is about, from its id: "keep.client-record" is "how long to keep: client record". */
function subjectOf(id: string): string {
  const [kind = "", what = ""] = id.split(".");
  const named = what.replaceAll("-", " ");
  return kind === "keep" ? `how long to keep: ${named}` : named === "" ? kind : `${kind}: ${named}`;
}

function says(value: LineValue): string {
  switch (value.kind) {
    case "age":
      return `at least ${value.minimumYears} years old`;
    case "keep":
      return `keep the ${value.record.replaceAll("-", " ")} ${showDuration(value.keep)} from ${value.from}`;
    case "biological-test":
      return [
        `biological test at least every ${showDuration(value.every)}`,
        ...value.alsoAfter.map((event) => `after ${event}`),
      ].join(", ");
    case "report":
      return `report ${value.what} within ${value.workingDays} working days`;
    case "waste":
      return `${value.stream}: ${value.colour}${value.code === null ? "" : `, ${value.code}`}, ${value.route}`;
    case "pack-label":
      return `each pack carries ${value.carries.join(", ")}`;
    case "sharps-fill":
      return `close a sharps container at ${Math.round(value.share * 100)} % full`;
    case "words":
      return value.words;
  }
}
