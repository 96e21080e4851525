/**
 * What every small subcommand shares: reading options, `--help`, `--json`, and the exit codes.
 * 0 done · 1 the answer is "no" (a failed hold, a refused age) · 2 the question could not be understood or is refused.
 */
import { parseArgs } from "node:util";
import { type Answer, answer, refuse } from "./answer";

/** Where a subcommand writes. Results go to `print`, the one line of trouble to `error`. */
export type Out = { readonly print: (line: string) => void; readonly error: (line: string) => void };

export type Command = (argv: readonly string[], out: Out) => Promise<number>;

type OptionTable = Record<string, { readonly type: "string" | "boolean"; readonly multiple?: boolean }>;

export type Options = {
  readonly text: (name: string) => string | undefined;
  readonly many: (name: string) => readonly string[];
  readonly on: (name: string) => boolean;
  readonly positionals: readonly string[];
};

/** What a subcommand found: a value for `--json`, lines for a person, and 0 or 1. */
export type Finding = { readonly json: unknown; readonly lines: readonly string[]; readonly exitCode: 0 | 1 };

/** Reads options strictly: an unknown or incomplete option is refused in one line. `--help` and `--json` are always known. */
export function readOptions(argv: readonly string[], table: OptionTable): Answer<Options, "usage"> {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      options: { ...table, help: { type: "boolean", short: "h" }, json: { type: "boolean" } },
      allowPositionals: true,
      strict: true,
    });
    const all = values as Record<string, string | boolean | (string | boolean)[] | undefined>;
    return answer({
      text: (name) => (typeof all[name] === "string" ? (all[name] as string) : undefined),
      many: (name) => (Array.isArray(all[name]) ? all[name].map(String) : []),
      on: (name) => all[name] === true,
      positionals,
    });
  } catch (problem) {
    return refuse("usage", firstSentence(problem));
  }
}

/**
 * Runs one subcommand: options, help, then the finding, printed as lines or as one JSON document.
 * @returns the exit code; whatever was typed, exactly one line goes to `error` when it is 2.
 */
export async function runCommand(
  argv: readonly string[],
  out: Out,
  command: {
    readonly help: string;
    readonly options: OptionTable;
    readonly find: (options: Options) => Answer<Finding, string> | Promise<Answer<Finding, string>>;
  },
): Promise<number> {
  const options = readOptions(argv, command.options);
  if (!options.ok) return complain(out, options.words);
  if (options.value.on("help")) {
    for (const line of command.help.trim().split("\n")) out.print(line);
    return 0;
  }
  const found = await command.find(options.value);
  if (!found.ok) return complain(out, found.words);
  if (options.value.on("json")) out.print(JSON.stringify(found.value.json, null, 2));
  else for (const line of found.value.lines) out.print(line);
  return found.value.exitCode;
}

function complain(out: Out, words: string): 2 {
  out.error(words);
  return 2;
}

/** Node's parser explains at length; one printable sentence is enough. */
function firstSentence(problem: unknown): string {
  const message = problem instanceof Error ? problem.message : "The options could not be read.";
  const line = message.replace(/[\p{C}\u2028\u2029]/gu, " ").toWellFormed();
  const end = line.indexOf(". ");
  return (end > 0 ? line.slice(0, end + 1) : line).slice(0, 200);
}
