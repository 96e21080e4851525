/** `gloveside plan FILE.json`: the schedule of a protocol's breakdown, or of a raw turnaround, as a table or as JSON. */

import { readFileSync } from "node:fs";
import { readProtocol } from "../session/readProtocol";
import { planText } from "./planText";
import type { Plan, Planned } from "./problem";
import { planProtocol, protocolPlanText } from "./protocolPlan";
import { rawProblemJsonSchema, readRawProblem } from "./rawProblem";
import { solve } from "./solve";

/** Where the command writes; `error` is for the one line that says why not. */
export interface Out {
  readonly write: (text: string) => void;
  readonly error: (text: string) => void;
}

const help = `gloveside plan FILE.json [--json] [--nodes N] [--next]

Plans the order of work that has the station ready soonest, and says whether that is proved. The file is a protocol,
whose breakdown is planned by the labels in it, or a turnaround of your own (--schema).
  --json      the plan as JSON
  --next      for a protocol: the next client's set-up too
  --nodes N   search at most about N partial plans (2000000 if absent)
  --schema    the JSON Schema of a turnaround; that of a protocol is public/protocol.schema.json
  --help      this text

Exit codes: 0 planned; 1 no order of work is possible, or none was found in the budget; 2 the file or a word is wrong.
`;

/**
 * Runs the command.
 * @param argv the words after "plan".
 * @returns the exit code: 0, 1 or 2 as in the help text.
 */
export function plan(argv: readonly string[], out: Out): number {
  if (argv.includes("--help")) {
    out.write(help);
    return 0;
  }
  if (argv.includes("--schema")) {
    out.write(`${JSON.stringify(rawProblemJsonSchema(), null, 2)}\n`);
    return 0;
  }
  const words = wordsOf(argv);
  if ("wrong" in words) return refuse(out, words.wrong);
  let text: string;
  try {
    text = readFileSync(words.file, "utf8");
  } catch {
    return refuse(out, `${words.file} cannot be read`);
  }
  if (isProtocol(text)) return planOfProtocol(text, words, out);
  const read = readRawProblem(text);
  if (!read.ok) return refuse(out, `${words.file} ${read.words}`);
  const answer = solve(read.problem, { budget: { nodes: words.nodes } });
  return tell(answer, words, out, answer, (found) => planText(read.problem, found));
}

function planOfProtocol(text: string, words: AllWords, out: Out): number {
  const read = readProtocol(text);
  if (!read.ok) return refuse(out, `${words.file} ${read.trouble.at}: ${read.trouble.message}`);
  const found = planProtocol(read.protocol, words.nodes, words.next);
  const { answer, problem: _, ...more } = found;
  const json = { protocol: read.protocol.id, ...answer, ...more, order: found.order };
  return tell(answer, words, out, json, (plan) => protocolPlanText(read.protocol, found, plan));
}

/** Only the mark is looked at here; what claims to be a protocol is read as one, with its own complaints. */
const isProtocol = (text: string): boolean => /"format"\s*:\s*"gloveside-protocol"/.test(text.slice(0, 2_000));

function tell(answer: Planned, words: AllWords, out: Out, json: object, textOf: (plan: Plan) => string): number {
  const isBadFile = answer.kind === "impossible" && badFileCodes.has(answer.code);
  if (isBadFile) return refuse(out, `${words.file}: ${answer.words}`);
  if (words.json) out.write(`${JSON.stringify(json, null, 2)}\n`);
  else if (answer.kind === "planned") out.write(textOf(answer));
  else if (answer.kind === "impossible") out.error(`Not possible: ${answer.words}\n`);
  else out.error(`No plan found in ${answer.nodes} nodes; try more with --nodes.\n`);
  return answer.kind === "planned" ? 0 : 1;
}

/** Refusals that say the file contradicts itself as a file, not that the work is impossible. */
const badFileCodes: ReadonlySet<string> = new Set([
  "bad-number",
  "bad-wet-surface",
  "duplicate-task",
  "unknown-task",
  "too-many-tasks",
]);

interface AllWords {
  readonly file: string;
  readonly json: boolean;
  readonly nodes: number;
  readonly next: boolean;
}
type Words = AllWords | { readonly wrong: string };

function wordsOf(argv: readonly string[]): Words {
  let file: string | undefined;
  let json = false;
  let next = false;
  let nodes = 2_000_000;
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at] ?? "";
    if (word === "--json") json = true;
    else if (word === "--next") next = true;
    else if (word === "--nodes") {
      nodes = Number(argv[++at]);
      if (!Number.isInteger(nodes) || nodes < 1) return { wrong: "--nodes takes a whole number, at least 1" };
    } else if (word.startsWith("-")) return { wrong: `does not know ${word}` };
    else if (file !== undefined) return { wrong: "takes one file" };
    else file = word;
  }
  return file === undefined ? { wrong: "needs a file" } : { file, json, nodes, next };
}

function refuse(out: Out, why: string): number {
  out.error(`gloveside plan: ${why}. See gloveside plan --help.\n`);
  return 2;
}
