/** `gloveside due`: exposure deadlines, the age gate, retention and reports at the command line. */
import { placeById, retentionRules, ruleOf } from "../places/profiles";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { type Finding, type Options, type Out, runCommand } from "../sums/commandLine";
import { ageGate } from "./age";
import { addWorkingDays, type CivilDate, parseDate, showDate } from "./calendar";
import { exposureDue, showExposureDue, standing } from "./exposure";
import { agreedFirstAid } from "./exposureRules";
import { keepUntil, recordKinds } from "./retention";
import { dateAt, isZone, parseInstant } from "./zone";

export const dueHelp = `
Usage: gloveside due QUESTION [options]

  exposure --at TIME              what is due after blood got through skin or into an eye
  age --born DATE [--on DATE]     is the client old enough
  retention --record KIND --from DATE
                                  until when a record is kept
  report --from DATE [--holiday DATE ...]
                                  the day a written report is due

Options:
  --place ID        great-britain, european-union, california, texas, new-york-city,
                    madison-county-illinois, elsewhere (default)
  --minimum YEARS   age instead of the place's
  --zone ZONE       IANA zone of the studio, default this machine's
  --json            one JSON document
  --help            this text

Not legal or medical advice. After an exposure see a clinician now.
Exit codes: 0 answered, 1 not old enough, 2 refused or not understood.
`;

const options = {
  at: { type: "string" },
  born: { type: "string" },
  on: { type: "string" },
  from: { type: "string" },
  record: { type: "string" },
  place: { type: "string" },
  minimum: { type: "string" },
  zone: { type: "string" },
  holiday: { type: "string", multiple: true },
} as const;

type Found = Answer<Finding, string>;

export function due(argv: readonly string[], out: Out, now: () => number = Date.now): Promise<number> {
  return runCommand(argv, out, {
    help: dueHelp,
    options,
    find: (given): Found => {
      const zone = given.text("zone") ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
      if (!isZone(zone)) return refuse("usage", `${quoted(zone)} is not an IANA time zone such as Europe/Berlin.`);
      const [question, stray] = given.positionals;
      if (stray !== undefined)
        return refuse("usage", `${quoted(stray)} is one word too many; see gloveside due --help.`);
      switch (question) {
        case "exposure":
          return findExposure(given, zone, now());
        case "age":
          return findAge(given, dateAt(now(), zone));
        case "retention":
          return findRetention(given);
        case "report":
          return findReport(given);
        default:
          return refuse("usage", `${quoted(question ?? "")} is not a question: exposure, age, retention or report.`);
      }
    },
  });
}

function findExposure(given: Options, zone: string, nowMs: number): Found {
  const at = parseInstant(given.text("at") ?? "", zone);
  if (!at.ok) return at;
  if (at.value > nowMs)
    return refuse("in-the-future", "An exposure cannot lie in the future; check the time and the zone.");
  const list = exposureDue(at.value, zone);
  return answer({
    json: {
      firstAid: agreedFirstAid,
      zone,
      due: list.map((line) => ({
        ...line.rule,
        opens: line.fromMs === null ? null : new Date(line.fromMs).toISOString(),
        due: new Date(line.dueMs).toISOString(),
        standing: standing(line, nowMs),
      })),
    },
    lines: [
      ...agreedFirstAid.map((line) => `! ${line.words} [${line.source}]`),
      ...list.map((line) => `${showExposureDue(line, zone)}${standing(line, nowMs) === "passed" ? "  PASSED" : ""}`),
    ],
    exitCode: 0,
  });
}

function findAge(given: Options, today: CivilDate): Found {
  const born = parseDate(given.text("born") ?? "");
  if (!born.ok) return born;
  const on = given.text("on") === undefined ? answer(today) : parseDate(given.text("on") ?? "");
  if (!on.ok) return on;
  const minimum = readMinimum(given);
  if (!minimum.ok) return minimum;
  const gate = ageGate(born.value, on.value, minimum.value);
  if (!gate.ok) return gate;
  const { allowed, years, oldEnoughOn, words } = gate.value;
  return answer({
    json: { allowed, years, minimumYears: minimum.value, oldEnoughOn: showDate(oldEnoughOn) },
    lines: [words],
    exitCode: allowed ? 0 : 1,
  });
}

function readMinimum(given: Options): Answer<number, string> {
  const own = given.text("minimum");
  if (own !== undefined)
    return /^\d{1,2}$/.test(own)
      ? answer(Number(own))
      : refuse("usage", `${quoted(own)} is not an age in whole years.`);
  const place = placeById(given.text("place") ?? "elsewhere");
  if (!place.ok) return place;
  const age = ruleOf(place.value, "age");
  return age
    ? answer(age.minimumYears)
    : refuse("not-known-here", `${place.value.name} gives no age here; say it with --minimum.`);
}

function findRetention(given: Options): Found {
  const from = parseDate(given.text("from") ?? "");
  if (!from.ok) return from;
  const kind = recordKinds.find((k) => k === given.text("record"));
  if (!kind) return refuse("usage", `--record must be one of ${recordKinds.join(", ")}.`);
  const place = placeById(given.text("place") ?? "elsewhere");
  if (!place.ok) return place;
  const rule = retentionRules(place.value)[kind];
  const line = place.value.lines.find((l) => l.value?.kind === "keep" && l.value.record === kind);
  if (!rule || !line)
    return refuse(
      "not-known-here",
      `How long ${place.value.name} keeps a ${kind} is not known here; keep it and look it up.`,
    );
  const until = showDate(keepUntil(rule, from.value));
  const { source, year, status } = line;
  return answer({
    json: { record: kind, place: place.value.id, countedFrom: rule.from, keepUntil: until, source, year, status },
    lines: [`keep until ${until}, counted from ${rule.from} [${source}, ${year ?? "undated"}, ${status}]`],
    exitCode: 0,
  });
}

function findReport(given: Options): Found {
  const from = parseDate(given.text("from") ?? "");
  if (!from.ok) return from;
  const place = placeById(given.text("place") ?? "elsewhere");
  if (!place.ok) return place;
  const rule = ruleOf(place.value, "report");
  if (!rule) return refuse("not-known-here", `${place.value.name} gives no report deadline here; look it up.`);
  const holidays: CivilDate[] = [];
  for (const text of given.many("holiday")) {
    const day = parseDate(text);
    if (!day.ok) return day;
    holidays.push(day.value);
  }
  const by = showDate(addWorkingDays(from.value, rule.workingDays, holidays));
  return answer({
    json: { place: place.value.id, what: rule.what, workingDays: rule.workingDays, due: by },
    lines: [`${by}: ${rule.what} (${rule.workingDays} working days)`],
    exitCode: 0,
  });
}
