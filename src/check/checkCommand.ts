/** `gloveside check`: is this protocol safe to work by? Proved, or the shortest story that shows it is not. */
import { readFile, stat } from "node:fs/promises";
import { type SpokenLanguage, spokenLanguages } from "../announcements/languages";
import type { Protocol } from "../session/protocol";
import { mostCharacters, readProtocol } from "../session/readProtocol";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { type Finding, type Options, type Out, runCommand } from "../sums/commandLine";
import { checkProtocol, type Verdict } from "./checkProtocol";
import { storyOf, whyOf } from "./story";
import { type CheckWords, checkWordsFor } from "./words";

export const checkHelp = `
Usage: gloveside check PROTOCOL.json [--language LANGUAGE] [--json]

Walks every order of steps, events and accidents that a session of this protocol allows, and says
whether any of them asks for something unsafe. "Not proved" counts as no.

  --language LANGUAGE   of the stories: en (the default) or es
  --json                the verdict as one JSON document
  --help                this text

Exit codes: 0 proved, 1 a breach or not proved, 2 not a protocol or not understood.
`;

/**
 * @param argv What follows "gloveside check".
 * @returns the exit code; with 2, one line with the place in the file has gone to `error`. Never throws.
 */
export const check = (argv: readonly string[], out: Out): Promise<number> =>
  runCommand(argv, out, { help: checkHelp, options: { language: { type: "string" } }, find });

const isSpoken = (language: string): language is SpokenLanguage =>
  spokenLanguages.some((spoken) => spoken === language);

async function find(given: Options): Promise<Answer<Finding, string>> {
  const [file, stray] = given.positionals;
  if (file === undefined) return refuse("usage", "no protocol was named (see gloveside check --help)");
  if (stray !== undefined) return refuse("usage", `${quoted(stray)} is one word too many (see gloveside check --help)`);
  const language = given.text("language") ?? "en";
  if (!isSpoken(language)) return refuse("usage", `${quoted(language)} is no language of the stories: en or es`);
  let text: string;
  try {
    // Not read at all: what is larger holds no protocol, whatever its letters are.
    if ((await stat(file)).size > 4 * mostCharacters)
      return refuse("too-large", `${quoted(file)}: at $: The file is larger than ${mostCharacters} characters`);
    text = await readFile(file, "utf8");
  } catch (problem) {
    const code = problem instanceof Error && "code" in problem ? String(problem.code) : "unknown";
    return refuse("not-read", `${quoted(file)} cannot be read (${code})`);
  }
  const read = readProtocol(text);
  if (!read.ok) return refuse(read.trouble.code, `${quoted(file)}: at ${read.trouble.at}: ${read.trouble.message}`);
  const found = checkProtocol(read.protocol);
  const w = checkWordsFor(language);
  const { protocol } = read;
  return answer({
    json: asJson(w, protocol, found),
    lines: verdictLines(w, protocol, found),
    exitCode: found.verdict === "proved" ? 0 : 1,
  });
}

/** The verdict itself is told in English; what the artist is told of a breach, in the language asked for. */
export function verdictLines(w: CheckWords, protocol: Protocol, found: Verdict): string[] {
  switch (found.verdict) {
    case "proved":
      return [`proved: ${found.states} states, ${found.transitions} transitions, 0 breaches (${found.ms} ms)`];
    case "notProved":
      return [`not proved: ${whyOf(w, protocol, found.why)} (${found.states} states, ${found.ms} ms)`];
    case "breach":
      return [
        ...found.breaches.flatMap((breach, i) => [
          `Breach ${i + 1}:`,
          ...storyOf(w, protocol, breach).map((line) => `  ${line}`),
          "",
        ]),
        `not safe: ${found.breaches.length} ${found.breaches.length === 1 ? "breach" : "breaches"} (${found.states} states, ${found.ms} ms)`,
      ];
  }
}

function asJson(w: CheckWords, protocol: Protocol, found: Verdict): unknown {
  if (found.verdict === "proved") return found;
  if (found.verdict === "notProved") return { ...found, words: whyOf(w, protocol, found.why) };
  const breaches = found.breaches.map((breach) => {
    const { rule, step, events } = breach;
    const { words, source } = w.rules[rule];
    return { rule, step, words, source, story: storyOf(w, protocol, breach), events };
  });
  return { ...found, breaches };
}
