/** The recogniser's face. Everything here runs in a page, in a worker and in Node alike. */

export { type DecisionSettings, sameForAll, usualSettings } from "./decision/settings";
export { Ear, type EarOptions } from "./ear";
export type { Heard } from "./heard";
export { type LoadedModel, loadModel, type ModelErrorCode, type PhraseModel } from "./network/loadModel";
export { sampleRateHz } from "./sampleRate";
export { highestRateHz, lowestRateHz, Resampler, resample } from "./sound/resample";
export { readWav, type Sound, type WavErrorCode, type WavResult } from "./sound/wav";
export { type WavShape, writeWav } from "./sound/writeWav";
