/** Every subcommand by name: one line about it, and its body, loaded when it is asked for. */
import type { Command, Out } from "../sums/commandLine";

export interface Subcommand {
  readonly about: string;
  readonly run: Command;
}

/** A body that writes text as it comes, on a way out that takes lines. */
const lineByLine = (print: (line: string) => void) => ({
  write: (text: string) => {
    for (const line of text.replace(/\n$/, "").split("\n")) print(line);
  },
});

const hear: Command = async (argv, out: Out) => {
  const body = await import("../recogniser/hear");
  return body.hear(argv, lineByLine(out.print), lineByLine(out.error));
};

/** It has one way out: what comes with exit code 2 is a complaint. */
const verify: Command = async (argv, out: Out) => {
  const texts: string[] = [];
  const body = await import("../export/verifyCommand");
  const exitCode = await body.verify(argv, (text) => void texts.push(text));
  lineByLine(exitCode === 2 ? out.error : out.print).write(texts.join(""));
  return exitCode;
};

export const subcommands: Readonly<Record<string, Subcommand>> = {
  rehearse: {
    about: "run a recorded session: sealed record and transcript",
    run: async (argv, out) => (await import("./rehearseCommand")).rehearseCommand(argv, out),
  },
  hear: { about: "what is heard in a recording, and when, as JSON lines", run: hear },
  verify: { about: "is a record whole, by which key, and does it follow", run: verify },
  check: {
    about: "is a protocol safe to work by: proved, or the shortest story that it is not",
    run: async (argv, out) => (await import("../check/checkCommand")).check(argv, out),
  },
  mix: {
    about: "how much stock makes the strength asked for",
    run: async (argv, out) => (await import("../mixing/cli")).mix(argv, out),
  },
  steriliser: {
    about: "was a cycle's hold unbroken; when is a test due",
    run: async (argv, out) => (await import("../steriliser/cli")).steriliser(argv, out),
  },
  due: {
    about: "exposure deadlines, age, retention, reports",
    run: async (argv, out) => (await import("../due/cli")).due(argv, out),
  },
  plan: {
    about: "in which order is the station ready soonest",
    run: async (argv, out) => {
      const { plan } = await import("../turnaround/planCommand");
      return plan(argv, { ...lineByLine(out.print), error: (text) => out.error(text.trimEnd()) });
    },
  },
};
