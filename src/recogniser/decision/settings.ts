/** The numbers by which the ear decides. The phrase model carries its own thresholds; the rest are ours. */
import { type CommandId, commandIds } from "../../intent/phrases";
import type { ModelFile } from "../network/modelFile";

export interface DecisionSettings {
  /** How many 80 ms steps are averaged. */
  readonly smoothSteps: number;
  /** Least smoothed probability for each command to act, 0..1. */
  readonly thresholds: Readonly<Record<CommandId, number>>;
  /** Least probability to refuse aloud something that is not permitted now. */
  readonly refuseAbove: number;
  /** Least probability to be asked about while the companion says the same words itself. */
  readonly guardAbove: number;
  /** Least probability while the companion says anything; an accident is asked about below it. */
  readonly speakingAbove: number;
  /** Together at least this, and the lesser at least its share: two commands worth asking about. */
  readonly unsureMass: number;
  readonly unsureShare: number;
  /** How long two must stay level before asking; one of them usually wins within this. */
  readonly patienceMs: number;
  /** After something was heard, nothing more for this long. */
  readonly refractoryMs: number;
  /** A command must fall below this before it may rise and act. */
  readonly rearmBelow: number;
  /** Steps above `rearmBelow` that make a near miss worth reporting as noise. */
  readonly noiseSteps: number;
}

/** One threshold for every command. */
export const sameForAll = (threshold: number): DecisionSettings["thresholds"] =>
  Object.fromEntries(commandIds.map((id) => [id, threshold])) as Record<CommandId, number>;

export const usualSettings: DecisionSettings = {
  smoothSteps: 2,
  thresholds: sameForAll(0.8),
  refuseAbove: 0.9,
  guardAbove: 0.97,
  // The thresholds below it were learnt with no voice of the companion's in the microphone.
  speakingAbove: 0.8,
  unsureMass: 0.8,
  unsureShare: 0.25,
  patienceMs: 240,
  refractoryMs: 800,
  rearmBelow: 0.3,
  noiseSteps: 3,
};

const stepMs = 80;

/** The model's thresholds and times; a command that it has no threshold for can never be heard. */
export function settingsOf(decision: ModelFile["decision"]): DecisionSettings {
  const thresholds = commandIds.map((id) => [id, decision.thresholds[id] ?? Number.POSITIVE_INFINITY] as const);
  return {
    ...usualSettings,
    smoothSteps: decision.smoothingHops,
    refractoryMs: decision.refractoryHops * stepMs,
    thresholds: Object.fromEntries(thresholds) as Record<CommandId, number>,
  };
}
