/** A place profile as rows to show: what it says in words, its source and year, and a mark on what is not confirmed. */
import { showDuration } from "../due/duration";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import type { LineValue, PlaceLine, PlaceProfile } from "./line";
import { placeName, placeText, sourceText, subjectName } from "./name";

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

export function placeView(place: PlaceProfile, phrases: SumPhrases = sumsEn): PlaceView {
  const rows = place.lines.map((line) => row(line, phrases));
  const marked = rows.filter(({ mark }) => mark !== null).length;
  return { name: placeName(place, phrases), caution: phrases.places.caution, rows, marked };
}

function row(line: PlaceLine, phrases: SumPhrases): PlaceRow {
  const { toFillIn, undated } = phrases.places;
  return {
    id: line.id,
    says: line.value ? says(line.value, phrases) : toFillIn(subjectName(line.id, phrases)),
    source: sourceText(line.source, phrases),
    year: line.year === null ? undated : String(line.year),
    mark: line.status === "confirmed" ? null : line.status,
  };
}

function says(value: LineValue, phrases: SumPhrases): string {
  const { places: say, due } = phrases;
  const text = (english: string) => placeText(english, phrases);
  switch (value.kind) {
    case "age":
      return say.age(value.minimumYears);
    case "keep":
      return say.keep(due.records[value.record], showDuration(value.keep, phrases), due.startsFrom[value.from]);
    case "biological-test": {
      const every = say.test(showDuration(value.every, phrases));
      return [every, ...value.alsoAfter.map((event) => say.alsoAfter(say.after[event]))].join(", ");
    }
    case "report":
      return say.report(text(value.what), value.workingDays);
    case "waste": {
      const code = value.code === null ? "" : `, ${value.code}`;
      return `${text(value.stream)}: ${text(value.colour)}${code}, ${text(value.route)}`;
    }
    case "pack-label":
      return say.packCarries(value.carries.map((what) => say.carried[what]).join(", "));
    case "sharps-fill":
      return say.sharpsFill(Math.round(value.share * 100));
    case "words":
      return text(value.words);
  }
}
