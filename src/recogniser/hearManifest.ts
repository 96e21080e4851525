/** Labelled recordings through the ear: what was heard in each, and the table that `npm run bench:voice` prints. */
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { type Figure, figureTable, verdictOf } from "./figures/figure";
import { figuresOf, type Outcome, outcomeOf } from "./figures/outcome";
import { hearWav } from "./hearWav";
import type { BadRow, Labelled } from "./manifest";
import type { PhraseModel } from "./network/loadModel";

export interface HeardAll {
  readonly outcomes: readonly (Outcome & { readonly file: string })[];
  readonly figures: readonly Figure[];
  readonly skipped: readonly BadRow[];
}

/** @param folder The files of the rows lie in it. A file that cannot be read is skipped and named; the others are heard. */
export async function hearManifest(model: PhraseModel, folder: string, rows: readonly Labelled[]): Promise<HeardAll> {
  const outcomes: (Outcome & { file: string })[] = [];
  const skipped: BadRow[] = [];
  for (const { file, said, condition, speaker, allowed, address } of rows) {
    const bytes = await readFile(resolve(folder, file)).catch(() => null);
    const result = bytes === null ? null : hearWav(bytes, { model, allowed, address });
    if (result === null) skipped.push({ file, why: "cannot be read" });
    else if (!result.ok) skipped.push({ file, why: result.message });
    else outcomes.push({ file, ...outcomeOf({ condition, speaker, said, soundMs: result.soundMs }, result.heard) });
  }
  return { outcomes, figures: figuresOf(outcomes), skipped };
}

/** For a person: the table, or what there is instead. */
export const linesOf = ({ figures }: HeardAll): readonly string[] =>
  figures.length === 0 ? ["nothing could be heard"] : figureTable(figures);

/** For a program. Numbers that were not measured are null. */
export function documentOf(model: PhraseModel, { outcomes, figures, skipped }: HeardAll) {
  const number = (value: number | null) => (value === null || Number.isNaN(value) ? null : value);
  return {
    phraseModel: model.digest,
    thresholds: model.descriptionDigest,
    figures: figures.map((figure) => {
      const { what, of, unit, bar } = figure;
      const [value, low, high] = [figure.value, figure.low, figure.high].map(number);
      return { what, of, value, low, high, unit, bar, verdict: verdictOf(figure) };
    }),
    files: outcomes.map(({ file, condition, speaker, said, acted, asked, soundMs }) => {
      return { file, condition, speaker, said, acted, asked, soundMs };
    }),
    skipped,
  };
}
