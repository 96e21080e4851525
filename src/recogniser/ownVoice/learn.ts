/**
 * From takes of an artist's phrases to a head and thresholds of their own. Takes are examples of their phrase at the moments
 * where it is complete; crossings and stored negatives are examples of nothing, and the stored ones set the thresholds again. Pure.
 */
import { type AddressWord, type CommandId, commandIds } from "../../intent/phrases";
import { wordings } from "../../intent/wording";
import type { PhraseModel } from "../network/loadModel";
import { type Head, headOf } from "../network/weightsOf";
import { Joint, type Outputs } from "./joint";
import type { Moment } from "./summaries";
import { type Example, tuneHead } from "./tuneHead";

export interface Take {
  readonly command: CommandId;
  /** When the phrase ended, from the start of the recording. */
  readonly endMs: number;
  readonly moments: readonly Moment[];
}

export interface OwnHead {
  readonly head: Head;
  readonly thresholds: Readonly<Partial<Record<CommandId, number>>>;
}

/** A phrase is decided at its end or a little later. */
const window = { beforeMs: 80, afterMs: 560 };
const margin = 0.05;
/**
 * A head that knows a voice is surer of its phrases, and of whatever resembles them too; crossings teach it the difference in
 * part. Chosen with the voices that choose thresholds (audio/make/MODEL_CARD.md): lower takes more near misses, higher loses phrases in noise.
 */
const leastThreshold = 0.85;
const mostThreshold = 0.95;

export const outputsOf = ({ file: { outputs } }: PhraseModel): Outputs => ({
  addresses: outputs.addressWords.length,
  commands: outputs.commandIds.length,
});
export const addressAt = (model: PhraseModel, address: AddressWord): number =>
  model.file.outputs.addressWords.indexOf(wordings[model.file.outputs.language].addresses[address]);
export const commandAt = (model: PhraseModel, command: CommandId): number =>
  model.file.outputs.commandIds.indexOf(command);

/** Commands that a model of this kind can be taught. */
export const teachable = (model: PhraseModel): readonly CommandId[] =>
  commandIds.filter((id) => commandAt(model, id) >= 0);

export function learnVoice(
  model: PhraseModel,
  address: AddressWord,
  takes: readonly Take[],
  crossings: readonly Float32Array[],
  negatives: readonly Float32Array[],
): OwnHead {
  const usual = headOf(model);
  const outputs = outputsOf(model);
  const own = addressAt(model, address);
  const joint = new Joint(usual, outputs);
  const positives = takes.flatMap(({ command, endMs, moments }) => {
    const target = { address: own, command: commandAt(model, command) };
    return completeMoments(joint, moments, endMs, target).map((summary): Example => ({ summary, target }));
  });
  const nothing = [...crossings, ...negatives].map((summary): Example => ({ summary, target: null }));
  const head = tuneHead(usual, outputs, [...positives, ...nothing]);
  return { head, thresholds: thresholdsFor(model, head, own, negatives) };
}

/** The three moments in a row where the phrase is surest, near its end. */
function completeMoments(
  joint: Joint,
  moments: readonly Moment[],
  endMs: number,
  target: { readonly address: number; readonly command: number },
): readonly Float32Array[] {
  const near = moments.filter(({ atMs }) => atMs >= endMs - window.beforeMs && atMs <= endMs + window.afterMs);
  const sure = near.map(({ summary }) => {
    joint.see(summary);
    return joint.p(target.address, target.command);
  });
  const best = sure.indexOf(Math.max(...sure));
  // Where the phrase is not known at all, its end is taken at a fifth of a second after the sound.
  const centre = (sure[best] ?? 0) > 0.05 ? best : near.findIndex(({ atMs }) => atMs >= endMs + 200);
  return near.slice(Math.max(0, centre - 1), centre + 2).map(({ summary }) => summary);
}

/** Just above the surest that anything stored was taken for the phrase. */
function thresholdsFor(
  model: PhraseModel,
  head: Head,
  address: number,
  negatives: readonly Float32Array[],
): OwnHead["thresholds"] {
  const joint = new Joint(head, outputsOf(model));
  const top = new Float64Array(outputsOf(model).commands);
  for (const summary of negatives) {
    joint.see(summary);
    for (let c = 0; c < top.length; c++) top[c] = Math.max(top[c] as number, joint.p(address, c));
  }
  return Object.fromEntries(
    teachable(model).map((id) => {
      const wanted = (top[commandAt(model, id)] as number) + margin;
      return [id, Math.round(100 * Math.min(mostThreshold, Math.max(leastThreshold, wanted))) / 100];
    }),
  );
}
