/** The microphone's face: where sound comes from. */

export { type Microphone, microphones, onMicrophonesChanged, onPermissionChanged } from "./devices";
export { type Level, LevelMeter } from "./level";
export { type MicrophoneOptions, microphone, untouched } from "./microphone";
export { observed } from "./observed";
export { type Pace, type Recording, realPace, recordingSource } from "./recording";
export type { LostBecause, OpenSound, Processing, RefusedBecause, SoundEvent, SoundSource } from "./vocabulary";
