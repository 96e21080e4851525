/** What happened in a rehearsed session, line by line, and the transcript a person reads. */
import type { Cue } from "../announcements/announce";
import type { CommandId } from "../intent/phrases";
import { commands } from "../intent/phrases";
import type { Phase, SessionFact } from "../session/fact";

/** `atMs` is sound time: milliseconds from the beginning of the recording. */
export type StoryLine = { readonly atMs: number } & (
  | { readonly kind: "heard"; readonly command: CommandId; readonly confidence: number }
  | { readonly kind: "unsure"; readonly candidates: readonly CommandId[]; readonly confidences: readonly number[] }
  | {
      readonly kind: "said";
      readonly text: string;
      readonly words: number;
      readonly solicited: boolean;
      readonly phase: Phase;
    }
  | { readonly kind: "cutOff" }
  | { readonly kind: "cue"; readonly cue: Cue }
  | { readonly kind: "kept"; readonly byVoice: boolean; readonly facts: readonly SessionFact[] }
  /** An answer was asked for and nothing had to be kept. */
  | { readonly kind: "asked"; readonly question: string }
  | { readonly kind: "notKept"; readonly code: string; readonly message: string }
);

/** "02:07.840", minutes may pass 59. */
export function clock(atMs: number): string {
  const ms = Math.round(atMs);
  const two = (n: number) => String(Math.floor(n)).padStart(2, "0");
  return `${two(ms / 60_000)}:${two((ms / 1000) % 60)}.${String(ms % 1000).padStart(3, "0")}`;
}

/** Time watched goes by in many facts; they are in the record and only clutter a transcript. */
const untold: ReadonlySet<SessionFact["type"]> = new Set(["v1.TimeWitnessed"]);

const percent = (confidence: number): string => `${Math.round(confidence * 100)} %`;

function tell(line: StoryLine): readonly string[] {
  switch (line.kind) {
    case "heard":
      return [`heard   "${commands[line.command]}" (${line.command}, ${percent(line.confidence)})`];
    case "unsure":
      return [
        `unsure  ${line.candidates.map((c, at) => `"${commands[c]}" ${percent(line.confidences[at] ?? 0)}`).join(" or ")}`,
      ];
    case "said":
      return [`${line.solicited ? "says   " : "speaks "} ${line.text}`];
    case "cutOff":
      return ["        (cut off)"];
    case "cue":
      return [`sounds  ${line.cue}`];
    case "kept":
      return line.facts.filter((fact) => !untold.has(fact.type)).map((fact) => `kept    ${factText(fact)}`);
    case "asked":
      return [];
    case "notKept":
      return [`NOT KEPT (${line.code}) ${line.message}`];
  }
}

/** "StepDone step=firstHands": a fact without its stamps. */
export function factText({ type, witnessedMs: _witnessed, cause: _cause, ...rest }: SessionFact): string {
  const about = Object.entries(rest).map(([name, value]) => `${name}=${JSON.stringify(value).replaceAll('"', "")}`);
  return [type.slice(3), ...about].join(" ");
}

/** "says" answers the artist, "speaks" interrupts. One line each, ending with a line feed. */
export const transcript = (story: readonly StoryLine[]): string =>
  story.flatMap((line) => tell(line).map((text) => `${clock(line.atMs)}  ${text}\n`)).join("");
