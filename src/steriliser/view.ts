/**
 * The steriliser screen as functions: a cycle typed in or dropped as a file becomes verdict, words and drawing; the
 * tests due become rows. The place the studio chose decides how often.
 */
import { type CivilDate, showDate } from "../due/calendar";
import type { PlaceProfile } from "../places/line";
import { ruleOf } from "../places/profiles";
import { type Answer, answer, refuse, wordsIn } from "../sums/answer";
import type { SumPhrases } from "../sums/phrases";
import { sumsEn } from "../sums/phrases/en";
import { type Band, bandById } from "./bands";
import { type CsvCode, parseCycleCsv } from "./csv";
import { biologicalDue, bowieDickDue, type ServiceEvent, type TestDue, weekly } from "./indicators";
import { type CycleVerdict, type HandEntry, type JudgeChoice, judgeCycle, judgeHandEntry, sayVerdict } from "./judge";
import { type CycleClass, checkLoad, type LoadKind } from "./load";
import { type CyclePlot, plotCycle } from "./plot";

/** What is the same however the cycle was read. */
type LoadForm = {
  readonly bandId: string;
  readonly cycleClass: CycleClass;
  readonly load: readonly LoadKind[];
  readonly statedByMaker: readonly LoadKind[];
  readonly choice: JudgeChoice;
};

export type CycleForm = LoadForm & {
  /** The file's text, or rows typed by hand in the same columns. */
  readonly csv: string;
  /** Local air pressure, kPa, for gauge columns; without it the standard atmosphere. */
  readonly atmosphereKPa?: number;
};

export type HandForm = LoadForm & { readonly entry: HandEntry };

export type CycleView = {
  readonly verdict: CycleVerdict;
  /** Verdict on the cycle and on the load in it: packs may be used only when true. */
  readonly accepted: boolean;
  readonly words: string;
  /** null when the load is right for the class. */
  readonly loadRefused: string | null;
  readonly plot: CyclePlot | null;
};

type FormCode = CsvCode | "unknown-band" | "empty-load";

export function cycleView(form: CycleForm, phrases: SumPhrases = sumsEn): Answer<CycleView, FormCode> {
  const record = parseCycleCsv(form.csv, form.atmosphereKPa);
  if (!record.ok) return record;
  const { readings } = record.value;
  return judged(
    form,
    (band) => judgeCycle(readings, band, form.choice),
    (verdict) => plotCycle(readings, verdict),
    phrases,
  );
}

/** The same from what was read off the display: with no readings in between there is nothing to draw. */
export function handView(form: HandForm, phrases: SumPhrases = sumsEn): Answer<CycleView, FormCode> {
  return judged(
    form,
    (band) => judgeHandEntry(form.entry, band, form.choice),
    () => null,
    phrases,
  );
}

function judged(
  form: LoadForm,
  judge: (band: Band) => CycleVerdict,
  draw: (verdict: CycleVerdict) => CyclePlot | null,
  phrases: SumPhrases,
): Answer<CycleView, FormCode> {
  const band = bandById(form.bandId);
  if (!band) return refuse("unknown-band", (say) => say.steriliser.chooseBand);
  const load = checkLoad(form.cycleClass, form.load, form.statedByMaker);
  if (!load.ok && load.code === "empty-load")
    return { ...load, code: "empty-load", ...(load.said && { said: load.said }) };
  const verdict = judge(band);
  const said = sayVerdict(verdict, phrases);
  return answer({
    verdict,
    accepted: verdict.accepted && load.ok,
    words: load.ok ? said : phrases.steriliser.notAccepted(wordsIn(load, phrases), said),
    loadRefused: load.ok ? null : wordsIn(load, phrases),
    plot: draw(verdict),
  });
}

export type TestRow = {
  readonly what: string;
  readonly due: string;
  readonly state: TestDue["state"];
  readonly because: string;
};

/** Tests due at this place; where the place gives no frequency the stricter published one, weekly, is used and named. */
export function testRows(
  place: PlaceProfile,
  facts: {
    readonly lastBiological: CivilDate | null;
    readonly lastBowieDick: CivilDate | null;
    readonly hasVacuum: boolean;
    readonly events: readonly ServiceEvent[];
  },
  today: CivilDate,
  phrases: SumPhrases = sumsEn,
): readonly TestRow[] {
  const say = phrases.steriliser;
  const rule = ruleOf(place, "biological-test");
  const biological = biologicalDue(facts.lastBiological, facts.events, rule ?? weekly, today);
  const bowieDick = bowieDickDue(facts.hasVacuum, facts.lastBowieDick, today);
  return [
    row(rule ? say.biologicalTest : say.weeklyHere, biological, phrases),
    ...(bowieDick ? [row(say.bowieDickTest, bowieDick, phrases)] : []),
  ];
}

function row(what: string, due: TestDue, phrases: SumPhrases): TestRow {
  return { what, due: showDate(due.dueOn), state: due.state, because: phrases.steriliser.because[due.because] };
}
