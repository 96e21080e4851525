/** The bundled place profiles and the three questions asked of one: what does it say, what is unsure, and whose is it. */
import { type RecordKind, type RetentionRule, recordKinds } from "../due/retention";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { placesEn } from "../sums/phrases/enPlaces";
import { europeanUnion } from "./europeanUnion";
import { greatBritain } from "./greatBritain";
import {
  confirmed,
  type LineValue,
  LineValue as LineValueSchema,
  type PlaceLine,
  type PlaceProfile,
  remembered,
  unknown,
} from "./line";
import { california, madisonCounty, newYorkCity, texas } from "./unitedStates";

/** For a studio whose place is not here: careful defaults, everything open to be filled in. */
const elsewhere: PlaceProfile = {
  id: "elsewhere",
  name: "Elsewhere: our own rules",
  lines: [
    remembered("age.minimum", { kind: "age", minimumYears: 18 }, "common rule; look up your own"),
    unknown("keep.client-record", "look up your own"),
    unknown("keep.steriliser-log", "look up your own"),
    confirmed(
      "test.biological",
      { kind: "biological-test", every: { weeks: 1 }, alsoAfter: [] },
      "CDC disinfection and sterilization guideline (the stricter of weekly and monthly)",
      2008,
    ),
    unknown("waste.infectious", "colours and codes differ by country; ask the waste contractor"),
    remembered("sharps.fill", { kind: "sharps-fill", share: 0.75 }, "common maker's line"),
  ],
};

export const places: readonly PlaceProfile[] = [
  greatBritain,
  europeanUnion,
  california,
  texas,
  newYorkCity,
  madisonCounty,
  elsewhere,
];

/** Shown with every profile, always. */
export const notLegalAdvice = placesEn.caution;

export function placeById(id: string): Answer<PlaceProfile, "unknown-place"> {
  const place = places.find((candidate) => candidate.id === id);
  return place
    ? answer(place)
    : refuse("unknown-place", `${quoted(id)} is not a place known here: ${places.map((p) => p.id).join(", ")}.`);
}

/** What a studio says instead of one line, why, and since when. */
export type Override = {
  readonly lineId: string;
  readonly value: unknown;
  readonly reason: string;
  readonly year: number;
};

/**
 * The profile with the studio's own lines in place of those it overrides. The original stays out of the result but in
 * the bundled profile, so "as supplied" can always be shown beside it. A new line id adds a line.
 */
export function withOverrides(
  place: PlaceProfile,
  overrides: readonly Override[],
): Answer<PlaceProfile, "bad-override"> {
  const lines = new Map(place.lines.map((line) => [line.id, line]));
  for (const override of overrides) {
    const value = LineValueSchema.safeParse(override.value);
    if (!value.success)
      return refuse("bad-override", `The studio's own value for ${quoted(override.lineId)} cannot be read.`);
    const before = lines.get(override.lineId);
    if (before?.value && before.value.kind !== value.data.kind)
      return refuse(
        "bad-override",
        `${quoted(override.lineId)} is about ${before.value.kind}, not ${value.data.kind}.`,
      );
    const reason = override.reason.trim();
    if (reason === "")
      return refuse("bad-override", `The studio's own value for ${quoted(override.lineId)} needs a reason.`);
    lines.set(override.lineId, {
      id: override.lineId,
      value: value.data,
      source: reason,
      year: override.year,
      status: "studio's own",
    });
  }
  return answer({ ...place, lines: [...lines.values()] });
}

/** Every line that a person should check before relying on it. */
export function unconfirmed(place: PlaceProfile): readonly PlaceLine[] {
  return place.lines.filter((line) => line.status !== "confirmed");
}

/** The one value of a kind that a place has, such as its age or its biological test; null where it has none. */
export function ruleOf<Kind extends LineValue["kind"]>(
  place: PlaceProfile,
  kind: Kind,
): Extract<LineValue, { kind: Kind }> | null {
  const found = place.lines.map((line) => line.value).find((value) => value?.kind === kind);
  return (found as Extract<LineValue, { kind: Kind }> | undefined) ?? null;
}

/** The retention table of a place, by kind of record; kinds it is silent on are absent. */
export function retentionRules(place: PlaceProfile): Partial<Record<RecordKind, RetentionRule>> {
  const rules: Partial<Record<RecordKind, RetentionRule>> = {};
  for (const { value } of place.lines)
    if (value?.kind === "keep") rules[value.record] = { keep: value.keep, from: value.from };
  return rules;
}

/** Kinds of record for which this place gives no length: shown as "not known here", never as a number. */
export function silentOn(place: PlaceProfile): readonly RecordKind[] {
  const known = retentionRules(place);
  return recordKinds.filter((kind) => known[kind] === undefined);
}
