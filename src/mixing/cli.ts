/** `gloveside mix`: the mixing sum at the command line, same words as the screen. */
import { isZone, parseInstant } from "../due/zone";
import { answer, quoted, refuse } from "../sums/answer";
import { type Finding, type Options, type Out, runCommand } from "../sums/commandLine";
import { exactText, type Ratio } from "../sums/ratio";
import { type MixForm, type MixView, mixView, stockKinds } from "./view";

export const mixHelp = `
Usage: gloveside mix --stock STRENGTH --target STRENGTH --volume VOLUME [options]

How much stock makes the strength asked for, "added to" and "made up to".

  --kind KIND       liquid (default), powder, tablet, alcohol
  --stock S         5%, 50000 ppm, 50 g/L, 12 deg chlorum; powder: 70%; alcohol: 96%, 190 proof;
                    tablet: grams of active chlorine in one tablet, 1.5 g
  --target S        0.5%, 1000 ppm, 70% v/v
  --volume V        1 L, 500 mL, 1 quart, 1 gallon (US)
  --with NAME       anything else meant for the bottle; all but water is refused
  --made-at TIME    2026-11-25T07:40 or with an offset; default now
  --label-hours H   use time the label gives once diluted; default 24
  --zone ZONE       IANA zone for the label, default this machine's
  --name NAME       name on the bottle label
  --by INITIALS     who made it
  --json            exact fractions as one JSON document
  --help            this text

The product's label outranks this sum. Never mix with acids, ammonia or other cleaners.
Exit codes: 0 answered, 2 refused or not understood.
`;

const options = {
  kind: { type: "string" },
  stock: { type: "string" },
  target: { type: "string" },
  volume: { type: "string" },
  with: { type: "string", multiple: true },
  "made-at": { type: "string" },
  "label-hours": { type: "string" },
  zone: { type: "string" },
  name: { type: "string" },
  by: { type: "string" },
} as const;

export function mix(argv: readonly string[], out: Out, now: () => number = Date.now): Promise<number> {
  return runCommand(argv, out, {
    help: mixHelp,
    options,
    find: (given) => {
      const form = readForm(given, now());
      if (!form.ok) return form;
      const view = mixView(form.value);
      return view.ok ? answer(finding(view.value)) : view;
    },
  });
}

function readForm(given: Options, nowMs: number) {
  const kind = given.text("kind") ?? "liquid";
  const known = stockKinds.find((k) => k === kind);
  if (!known) return refuse("usage", `${quoted(kind)} is not a kind of stock: ${stockKinds.join(", ")}.`);
  if (given.positionals.length > 0)
    return refuse("usage", `${quoted(given.positionals[0] ?? "")} is not an option; see gloveside mix --help.`);
  const missing = ["stock", "target", "volume"].find((name) => given.text(name) === undefined);
  if (missing) return refuse("usage", `--${missing} is needed; see gloveside mix --help.`);
  const zone = given.text("zone") ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (!isZone(zone)) return refuse("usage", `${quoted(zone)} is not an IANA time zone such as Europe/Berlin.`);
  const madeAt = given.text("made-at");
  const madeAtMs = madeAt === undefined ? answer(nowMs) : parseInstant(madeAt, zone);
  if (!madeAtMs.ok) return madeAtMs;
  const form: MixForm = {
    kind: known,
    stock: given.text("stock") ?? "",
    target: given.text("target") ?? "",
    volume: given.text("volume") ?? "",
    companions: given.many("with"),
    productName: printable(given.text("name") ?? "Mixed disinfectant"),
    madeBy: printable(given.text("by") ?? "____"),
    madeAtMs: madeAtMs.value,
    labelHours: given.text("label-hours") ?? "",
    zone,
  };
  return answer(form);
}

/** Names end up on a printed label and in a terminal: one line, no control characters. */
function printable(text: string): string {
  return quoted(text).slice(1, -1);
}

function finding(view: MixView): Finding {
  return {
    json: {
      ...view,
      mix: exact(view.mix),
      measured: exact(view.measured),
      useBy: { ...view.useBy, madeAt: iso(view.useBy.madeAtMs), useBy: iso(view.useBy.useByMs) },
    },
    lines: [
      ...view.lines,
      "",
      ...view.label.printed.map((line) => `  | ${line}`),
      "",
      ...view.cautions.map((caution) => `! ${caution.words} [${caution.source}]`),
    ],
    exitCode: 0,
  };
}

function iso(ms: number): string {
  return new Date(ms).toISOString();
}

/** Fractions and whole counts become exact text: "1000/9". */
function exact(value: unknown): unknown {
  if (typeof value === "bigint") return value.toString();
  if (value === null || typeof value !== "object") return value;
  if ("n" in value && "d" in value && "s" in value) return exactText(value as Ratio);
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, exact(inner)]));
}
