/**
 * `npm run bench:voice`: the ear as it is shipped, against every bar that is set for it, with Debian's PocketSphinx beside
 * it on some of the same sound. One table, 95 % intervals: phrases by drawing speakers again, rates by Poisson's bound.
 *
 *   -- full              every phrase by every voice, 30 h of sound that is no command
 *   --hours H            so many hours of it (default 0.4)
 *   --minutes M          stop listening after M minutes and say what was heard by then
 *   --jobs N             in N processes (default 1)
 *   --model FOLDER       another phrase model than public/voice
 *   --json FILE          the figures as JSON, too
 *   --no-sphinx          without PocketSphinx
 *
 * A run that was cut short goes on where it stopped when it is asked for again; a longer one begins with what it heard.
 */
import { execFile } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs, promisify } from "node:util";
import { type Figure, figureTable, least, most, verdictOf } from "../../../src/recogniser/figures/figure";
import { quantile } from "../../../src/recogniser/figures/intervals";
import {
  actedWrong,
  barFor,
  falseActions,
  heardRight,
  isRight,
  type Outcome,
} from "../../../src/recogniser/figures/outcome";
import { shippedModel } from "../../../src/recogniser/network/shippedModel";
import { coreShare, downloadMb } from "./costs";
import { openJournal } from "./journal";
import { type Done, performAll } from "./perform";
import { accentConditions, accidentConditions, jobsOf, phraseConditions, soundsAtHand } from "./plan";
import { sphinxBeside } from "./sphinxBeside";
import { kinds } from "./stretches";
import { heldOutDigest } from "./voices";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    hours: { type: "string" },
    minutes: { type: "string" },
    jobs: { type: "string", default: "1" },
    model: { type: "string" },
    json: { type: "string" },
    "no-sphinx": { type: "boolean", default: false },
  },
});
const isFull = positionals.includes("full");
const wishes = { isFull, hours: Number(values.hours ?? (isFull ? 30 : 0.4)) };
const modelFolder = values.model === undefined ? null : resolve(values.model);
const modelUrl =
  modelFolder === null ? new URL("../../../public/voice/", import.meta.url) : pathToFileURL(`${modelFolder}/`);
const loaded = await shippedModel(modelUrl);
if (!loaded.ok) throw new Error(loaded.message);
const { model } = loaded;

const began = performance.now();
const minutes = () => ((performance.now() - began) / 60_000).toFixed(1);
const jobs = jobsOf(wishes);
const journal = openJournal(model);
const known = jobs.map((job) => journal.known(job));
let left = known.filter((one) => one === null).length;
if (left < jobs.length) process.stderr.write(`${jobs.length - left} of ${jobs.length} taken from an earlier run\n`);
const { done, spent } = await performAll(model, {
  jobs,
  modelFolder,
  known,
  processes: Number(values.jobs),
  stopAtMs: began + Number(values.minutes ?? Number.POSITIVE_INFINITY) * 60_000,
  keep: (job, result, still) => {
    journal.write(job, result);
    left = still;
    if (left % Math.ceil(jobs.length / 20) === 0) process.stderr.write(`${left} left after ${minutes()} min\n`);
  },
});
const sounds = soundsAtHand();
const beside = values["no-sphinx"]
  ? { cells: new Map<string, string>(), wrong: undefined, missing: [] }
  : sphinxBeside(jobs, sounds, isFull ? 60 : 12, isFull ? 12 : 2);

type ClipDone = Extract<Done, { of: "clip" }>;
type StretchDone = Extract<Done, { of: "stretch" }>;
const clips = done.filter((one): one is ClipDone => one?.of === "clip");
const stretches = done.filter((one): one is StretchDone => one?.of === "stretch");
const among = (of: readonly { readonly outcome: Outcome }[], ...names: readonly string[]) =>
  of.map(({ outcome }) => outcome).filter(({ condition }) => names.includes(condition));

const phraseNames = phraseConditions.map(({ name }) => name);
const accidentBars = [least(99), least(97), least(90)];
const negatives = among(stretches, ...kinds);
const confirmed = stretches.reduce((sum, one) => sum + one.confirmed, 0);
const hoursOf = (outcomes: readonly Outcome[]) => outcomes.reduce((sum, { soundMs }) => sum + soundMs, 0) / 3_600_000;
const delays = clips.flatMap(({ outcome, delayMs }) =>
  phraseNames.includes(outcome.condition) && delayMs !== null ? [delayMs] : [],
);
const plain = (figure: Pick<Figure, "what" | "of" | "value" | "unit" | "bar">): Figure => ({
  ...figure,
  low: null,
  high: null,
  beside: null,
});

const unmeasured: string[] = isFull
  ? []
  : ["teaching and its own announcements (with -- full, npm run bench:enrol, bench:echo)"];
unmeasured.push("earcon and lost samples in Chromium (npm run bench:latency)");
const figures: readonly Figure[] = [
  ...phraseNames.map((name) =>
    heardRight(`unseen voices, ${name}`, among(clips, name), barFor(name), beside.cells.get(name)),
  ),
  ...accentConditions.map(({ name }) => heardRight(name, among(clips, name), null, beside.cells.get(name))),
  actedWrong(
    "another phrase acted on, 10 dB or better",
    among(clips, ...phraseNames, ...accentConditions.map(({ name }) => name)),
    most(0.5, "high"),
    beside.wrong,
  ),
  ...accidentConditions.map(({ name }, n) =>
    heardRight(`${name}`, among(clips, name), accidentBars[n] ?? null, beside.cells.get(name)),
  ),
  falseActions("false actions, all negatives", negatives, most(0.3, "high")),
  ...kinds.map((name) => falseActions(`  ${name}`, among(stretches, name), null, beside.cells.get(name))),
  falseActions("  all but near misses", among(stretches, ...kinds.filter((name) => name !== "near misses")), null),
  plain({
    what: "read back and confirmed",
    of: `${hoursOf(negatives).toFixed(2)} h`,
    value: confirmed,
    unit: "",
    bar: most(0),
  }),
  falseActions(
    "a neighbour's commands, -10 dB",
    among(stretches, "neighbour"),
    most(0.3, "high"),
    beside.cells.get("neighbour"),
  ),
  falseActions(
    "another station's speech, -10 dB",
    among(stretches, "announcements"),
    most(0.3, "high"),
    beside.cells.get("announcements"),
  ),
  ...(isFull ? await besideRows(["tests/bench/ear/enrol.bench.ts", "8", "120"]) : []),
  ...(isFull ? await besideRows(["tests/bench/ear/echo.bench.ts", "30", "8"]) : []),
  plain({
    what: "end of phrase to decision, median",
    of: `${delays.length} phrases`,
    value: quantile(delays, 0.5),
    unit: "ms",
    bar: null,
  }),
  plain({
    what: "end of phrase to decision, p95",
    of: `${delays.length} phrases`,
    value: quantile(delays, 0.95),
    unit: "ms",
    bar: null,
  }),
  plain({
    what: "share of one core, listening",
    of: "60 s, Node",
    value: 100 * coreShare(model, sounds.noises.machine?.(30 * 16_000, 3) ?? new Float32Array(480_000)),
    unit: "%",
    bar: most(15),
  }),
  plain({
    what: "download for voice, gzip",
    of: "model, worker, worklet",
    value: await downloadMb(modelUrl),
    unit: "MB",
    bar: most(8),
  }),
];

console.log(`Phrase model ${model.digest.slice(0, 16)}, thresholds ${model.descriptionDigest.slice(0, 16)}.`);
console.log(`Held-out list (SHA-256) ${heldOutDigest.slice(0, 16)}. ${minutes()} min.`);
const inMinutes = (ms: number) => `${(ms / 60_000).toFixed(1)} min`;
console.log(
  `All processes together: sounds made ${inMinutes(spent.makingMs)}, mixed ${inMinutes(spent.mixingMs)}, heard ${inMinutes(spent.hearingMs)}.`,
);
if (left > 0) console.log(`CUT SHORT: ${jobs.length - left} of ${jobs.length} pieces of sound were heard.`);
for (const name of new Set([...sounds.missing, ...beside.missing, ...unmeasured])) console.log(`NOT MEASURED: ${name}`);
console.log(`\n${figureTable(figures).join("\n")}\n`);
console.log(bySpeaker().join("\n"));
const inVain = stretches.flatMap(({ outcome }) => outcome.acted.map((command) => `${command} (${outcome.condition})`));
console.log(`\nActed on in vain: ${inVain.length === 0 ? "nothing" : inVain.join(", ")}.`);
const verdicts = figures.map(verdictOf);
const count = (verdict: string) => verdicts.filter((one) => one === verdict).length;
console.log(
  `\n${count("met")} bars met, ${count("missed")} missed, ${count("not shown")} not shown by so short a run.`,
);
if (values.json !== undefined) {
  mkdirSync(dirname(resolve(values.json)), { recursive: true });
  writeFileSync(values.json, `${JSON.stringify({ model: model.digest, heldOutDigest, wishes, figures }, null, 1)}\n`);
}

/** Rows that a benchmark of its own measures, on the shipped model: what teaching is worth, its own announcements. */
async function besideRows([script, ...args]: readonly [string, ...string[]]): Promise<readonly Figure[]> {
  if (modelFolder !== null) return [];
  const file = join("out", "bench", "rows.json");
  rmSync(file, { force: true });
  const run = promisify(execFile);
  try {
    await run(process.execPath, [...process.execArgv, script, ...args, file], { maxBuffer: 2 ** 26 });
    return JSON.parse(readFileSync(file, "utf8")) as readonly Figure[];
  } catch (problem) {
    const [reason] = (problem instanceof Error ? problem.message : String(problem)).match(/Error: .*/) ?? [""];
    unmeasured.push(`${script} (${reason})`);
    return [];
  }
}

/** Which voices are heard worst: percent heard right, one row for each. */
function bySpeaker(): readonly string[] {
  const outcomes = among(clips, ...phraseNames);
  const speakers = [...new Set(outcomes.map(({ speaker }) => speaker))];
  const share = (of: readonly Outcome[]) => ((100 * of.filter(isRight).length) / Math.max(1, of.length)).toFixed(0);
  return [
    `| voice | ${phraseNames.join(" | ")} |`,
    `|---${"|---".repeat(phraseNames.length)}|`,
    ...speakers.map((speaker) => {
      const mine = outcomes.filter((one) => one.speaker === speaker);
      return `| ${speaker} | ${phraseNames.map((name) => share(mine.filter((one) => one.condition === name))).join(" | ")} |`;
    }),
  ];
}
