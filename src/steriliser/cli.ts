/** `gloveside steriliser`: the verdict on a cycle, when a test is due, and steam at the command line. */
import { parseDate, showDate } from "../due/calendar";
import { dateAt, isZone } from "../due/zone";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { type Finding, type Options, type Out, runCommand } from "../sums/commandLine";
import { bandById, bands, showBand } from "./bands";
import { readChoice, readLoad, readNumber, readText } from "./cliOptions";
import { parseCycleCsv } from "./csv";
import { biologicalDue, monthly, weekly } from "./indicators";
import { type CycleVerdict, type JudgeChoice, judgeCycle, judgeHandEntry, sayVerdict } from "./judge";
import { loadKinds } from "./load";
import { saturationCelsius, saturationKPa } from "./steam";

export const steriliserHelp = `
Usage: gloveside steriliser QUESTION [options]

  check FILE.csv    was the band held unbroken; F0 beside it; was it saturated steam
                    columns: time_s (or time_min, time_ms), temperature_c (or _f), and optionally
                    pressure_kpa_abs, pressure_kpa_gauge, pressure_bar_abs, pressure_bar_gauge,
                    pressure_psi_abs, pressure_psi_gauge
  hand --coolest C --hottest C --minutes M [--kpa-abs P]
                    the same from what was read off the display
  due --last DATE   next biological test; --rule weekly (default) or monthly
  steam --celsius C | --kpa-abs P
                    saturated steam by IAPWS-IF97

Options:
  --band ID         ${bands.map((band) => band.id).join(", ")}
                    default en-134
  --class B|N|S     class of the cycle, with --load KIND ... (${loadKinds.join(", ")})
                    and, for S, --stated KIND ... as the maker states
  --gap SECONDS     readings further apart prove nothing; default 60
  --atmosphere KPA  local air pressure for gauge columns; default 101.325
  --tref C --z K --method NAME
                    how F0 is computed; default 121.1, 10, exactRamp (also trapezoid, leftRectangle)
  --zone ZONE       IANA zone that says which day is today
  --json            one JSON document
  --help            this text

Exit codes: 0 accepted or answered, 1 not accepted or overdue, 2 refused or not understood.
`;

const one = { type: "string" } as const;
const many = { type: "string", multiple: true } as const;
const options = {
  ...{ coolest: one, hottest: one, minutes: one, "kpa-abs": one, celsius: one, last: one, rule: one, zone: one },
  ...{ band: one, class: one, load: many, stated: many, gap: one, atmosphere: one, tref: one, z: one, method: one },
};

type Found = Answer<Finding, string>;

export function steriliser(argv: readonly string[], out: Out, now: () => number = Date.now): Promise<number> {
  return runCommand(argv, out, {
    help: steriliserHelp,
    options,
    find: async (given): Promise<Found> => {
      const [question, file, stray] = given.positionals;
      if (stray !== undefined || (file !== undefined && question !== "check"))
        return refuse("usage", `${quoted(stray ?? file ?? "")} is one word too many; see gloveside steriliser --help.`);
      switch (question) {
        case "check":
          return file === undefined ? refuse("usage", "Name the CSV file to check.") : findCheck(file, given);
        case "hand":
          return findHand(given);
        case "due":
          return findDue(given, now());
        case "steam":
          return findSteam(given);
        default:
          return refuse("usage", `${quoted(question ?? "")} is not a question: check, hand, due or steam.`);
      }
    },
  });
}

async function findCheck(file: string, given: Options): Promise<Found> {
  const text = await readText(file);
  if (!text.ok) return text;
  const atmosphere = readNumber(given, "atmosphere", 101.325, 50, 110);
  if (!atmosphere.ok) return atmosphere;
  const record = parseCycleCsv(text.value, atmosphere.value);
  if (!record.ok) return record;
  return judged(given, record.value.ignoredColumns, (band, choice) => judgeCycle(record.value.readings, band, choice));
}

function findHand(given: Options): Found {
  const coolest = readNumber(given, "coolest", null, -20, 200);
  if (!coolest.ok) return coolest;
  const hottest = readNumber(given, "hottest", null, -20, 200);
  if (!hottest.ok) return hottest;
  const minutes = readNumber(given, "minutes", null, 0, 1440);
  if (!minutes.ok) return minutes;
  const kPa = given.text("kpa-abs") === undefined ? answer(null) : readNumber(given, "kpa-abs", null, 0, 1000);
  if (!kPa.ok) return kPa;
  if (coolest.value > hottest.value) return refuse("usage", "The coolest reading is hotter than the hottest.");
  const entry = { coolestC: coolest.value, hottestC: hottest.value, heldMs: minutes.value * 60_000, kPaAbs: kPa.value };
  return judged(given, [], (band, choice) => judgeHandEntry(entry, band, choice));
}

function judged(
  given: Options,
  ignored: readonly string[],
  judge: (band: CycleVerdict["band"], choice: JudgeChoice) => CycleVerdict,
): Found {
  const bandId = given.text("band") ?? "en-134";
  const band = bandById(bandId);
  if (!band) return refuse("usage", `${quoted(bandId)} is not a band known here; see gloveside steriliser --help.`);
  const choice = readChoice(given);
  if (!choice.ok) return choice;
  const load = readLoad(given);
  if (!load.ok) return load;
  const verdict = judge(band, choice.value);
  const words = sayVerdict(verdict);
  return answer({
    json: { ...verdict, words, needed: showBand(band), loadRefused: load.value, ignoredColumns: ignored },
    lines: [
      words,
      `rule: ${band.source} (${band.status})`,
      ...verdict.breaks.slice(0, 20).map((b) => `break at ${(b.atMs / 60_000).toFixed(2)} min: ${b.kind}`),
      ...(load.value === null ? [] : [`NOT accepted: ${load.value}`]),
      ...ignored.map((name) => `column ${quoted(name)} was not used`),
    ],
    exitCode: verdict.accepted && load.value === null ? 0 : 1,
  });
}

function findDue(given: Options, nowMs: number): Found {
  const last = parseDate(given.text("last") ?? "");
  if (!last.ok) return last;
  const zone = given.text("zone") ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (!isZone(zone)) return refuse("usage", `${quoted(zone)} is not an IANA time zone such as Europe/Berlin.`);
  const name = given.text("rule") ?? "weekly";
  const rule = name === "weekly" ? weekly : name === "monthly" ? monthly : null;
  if (!rule) return refuse("usage", "--rule must be weekly or monthly.");
  const { dueOn, state } = biologicalDue(last.value, [], rule, dateAt(nowMs, zone));
  return answer({
    json: { rule: name, dueOn: showDate(dueOn), state },
    lines: [`biological test ${state === "later" ? "due" : state} ${showDate(dueOn)} (${name})`],
    exitCode: state === "overdue" ? 1 : 0,
  });
}

function findSteam(given: Options): Found {
  if ((given.text("celsius") === undefined) === (given.text("kpa-abs") === undefined))
    return refuse("usage", "Give either --celsius or --kpa-abs.");
  const byPressure = given.text("kpa-abs") !== undefined;
  const value = byPressure
    ? readNumber(given, "kpa-abs", null, 0.62, 22_000)
    : readNumber(given, "celsius", null, 0, 373.9);
  if (!value.ok) return value;
  const kPaAbs = byPressure ? value.value : saturationKPa(value.value);
  const celsius = byPressure ? saturationCelsius(value.value) : value.value;
  if (kPaAbs === null || celsius === null) return refuse("out-of-range", "Outside the range of the formulation.");
  return answer({
    json: { celsius, kPaAbs, source: "IAPWS-IF97 region 4" },
    lines: [
      `${celsius.toFixed(3)} °C saturated steam is ${kPaAbs.toFixed(2)} kPa absolute (${(kPaAbs / 100 - 1.01325).toFixed(4)} bar gauge)`,
    ],
    exitCode: 0,
  });
}
