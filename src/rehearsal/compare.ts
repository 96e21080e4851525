/** What the ear heard against what was said: missed, wrong, and everything that nobody said. Pure. */
import type { CommandId } from "../intent/phrases";
import type { Label } from "./act";
import type { StoryLine } from "./story";

export interface Mistake {
  readonly atMs: number;
  readonly said: CommandId | null;
  readonly heard: CommandId | null;
}

export interface Comparison {
  readonly said: number;
  readonly right: number;
  /** Said and not heard, or not surely enough. */
  readonly missed: readonly Mistake[];
  /** Heard as another command, or heard when nothing was said: each would have moved the session wrongly. */
  readonly wrong: readonly Mistake[];
}

/** An answer belongs to a phrase if it comes while it is said, or so soon after. */
const laterMs = 1_500;

export function compare(labels: readonly Label[], story: readonly StoryLine[]): Comparison {
  const heard = story.filter((line) => line.kind === "heard");
  const within = (label: Label, atMs: number) => atMs >= label.startMs && atMs <= label.endMs + laterMs;
  const answers = labels.map((label) => heard.filter(({ atMs }) => within(label, atMs)));
  const isRight = labels.map(({ command }, place) => answers[place]?.some((line) => line.command === command) ?? false);
  const missed = labels.filter((_, place) => !isRight[place]);
  const wrong = heard.flatMap((line): Mistake[] => {
    const place = labels.findIndex((label) => within(label, line.atMs));
    const said = labels[place]?.command ?? null;
    const isFirst = answers[place]?.find(({ command }) => command === said) === line;
    return said === line.command && isFirst ? [] : [{ atMs: line.atMs, said, heard: line.command }];
  });
  return {
    said: labels.length,
    right: isRight.filter(Boolean).length,
    missed: missed.map(({ command, startMs }) => ({ atMs: startMs, said: command, heard: null })),
    wrong,
  };
}
