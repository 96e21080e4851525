/** `gloveside`: the same recogniser, chart, rules and log as the app, at the command line. */
import type { Out } from "../sums/commandLine";
import { subcommands } from "./subcommands";
import { appVersion } from "./version";

const help = (): string[] => [
  "Usage: gloveside SUBCOMMAND ...",
  "",
  ...Object.entries(subcommands).map(([name, { about }]) => `  ${name.padEnd(12)}${about}`),
  "",
  "gloveside SUBCOMMAND --help says more. gloveside --version says which this is.",
  "Exit codes: 0 done, 1 the answer is no, 2 refused or not understood.",
];

/**
 * @param argv What follows "gloveside".
 * @returns the exit code: 0, 1 or 2. With 2, one line has gone to `error`. Never throws.
 */
export async function main(argv: readonly string[], out: Out): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined) {
    out.error(`gloveside: a subcommand is needed: ${Object.keys(subcommands).join(", ")} (see gloveside --help)`);
    return 2;
  }
  if (name === "--help" || name === "-h" || name === "help") {
    for (const line of help()) out.print(line);
    return 0;
  }
  if (name === "--version") {
    out.print(appVersion());
    return 0;
  }
  /** Some bodies name themselves, some do not. */
  const complain = (line: string): void => out.error(`gloveside ${name}: ${line.replace(`gloveside ${name}: `, "")}`);
  const subcommand = Object.hasOwn(subcommands, name) ? subcommands[name] : undefined;
  if (!subcommand) {
    out.error(
      `gloveside: ${JSON.stringify(name.slice(0, 40))} is not a subcommand: ${Object.keys(subcommands).join(", ")}`,
    );
    return 2;
  }
  try {
    return await subcommand.run(rest, { print: out.print, error: complain });
  } catch (mistake) {
    complain(`this should not happen, please report it: ${mistake instanceof Error ? mistake.message : mistake}`);
    return 2;
  }
}
