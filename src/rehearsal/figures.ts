/** A rehearsed session in numbers: heard, acted on, words spoken, and interruptions by phase. */
import { type Phase, phases } from "../session/fact";
import type { StoryLine } from "./story";

export interface Figures {
  /** Phrases understood, of which `acted` changed or answered something and `refused` were not allowed. */
  readonly heard: number;
  readonly acted: number;
  readonly refused: number;
  /** Times that two phrases were likely and the companion asked. */
  readonly unsure: number;
  readonly utterances: number;
  readonly words: number;
  /** Utterances that answered nothing the artist had just said. */
  readonly interruptions: Readonly<Record<Phase, number>>;
}

const isRefusal = (line: StoryLine): boolean =>
  line.kind === "kept" && line.byVoice && line.facts.some((fact) => fact.type === "v1.Refused");
const isAct = (line: StoryLine): boolean =>
  (line.kind === "kept" && line.byVoice && !isRefusal(line)) || line.kind === "asked";

export function figuresOf(story: readonly StoryLine[]): Figures {
  const said = story.filter((line) => line.kind === "said");
  const count = (is: (line: StoryLine) => boolean) => story.filter(is).length;
  return {
    heard: count(({ kind }) => kind === "heard"),
    acted: count(isAct),
    refused: count(isRefusal),
    unsure: count(({ kind }) => kind === "unsure"),
    utterances: said.length,
    words: said.reduce((sum, { words }) => sum + words, 0),
    interruptions: Object.fromEntries(
      phases.map((phase) => [phase, said.filter((line) => line.phase === phase && !line.solicited).length]),
    ) as Record<Phase, number>,
  };
}

export const figureLines = (figures: Figures): readonly string[] => [
  `heard ${figures.heard}, acted on ${figures.acted}, refused ${figures.refused}, unsure ${figures.unsure}`,
  `spoke ${figures.words} words in ${figures.utterances} utterances`,
  `interruptions: ${phases.map((phase) => `${phase} ${figures.interruptions[phase]}`).join(", ")}`,
];
