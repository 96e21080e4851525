/**
 * The earcons as notes. Pitches and harmonics follow the advice of IEC 60601-1-8 for sounds that are found again in a
 * noisy room: pulses of 150-1000 Hz with at least four harmonics in 300-4000 Hz, none more than 15 dB from the pulse
 * frequency; rise time 10-40 % of the pulse (from memory). Ours; released with the project under its licence.
 */

export const cueIds = ["heard", "clockStarted", "timeUp", "refused", "alarm"] as const;
export type CueId = (typeof cueIds)[number];

export interface Pulse {
  readonly frequencyHz: number;
  readonly pulseMs: number;
  readonly restMs: number;
}

const C4 = 261.6256;
const E4 = 329.6276;
const G4 = 391.9954;
const C5 = 523.2511;

const pulse = (frequencyHz: number, pulseMs: number, restMs = 0): Pulse => ({ frequencyHz, pulseMs, restMs });

export const cues: Readonly<Record<CueId, readonly Pulse[]>> = {
  /** One short pulse: understood, not yet kept. */
  heard: [pulse(C5, 70)],
  /** Up: something begins to run. */
  clockStarted: [pulse(C4, 90, 30), pulse(G4, 110)],
  /** Three alike, as the standard's medium priority. */
  timeUp: [pulse(E4, 130, 90), pulse(E4, 130, 90), pulse(E4, 130)],
  /** Down: not allowed. */
  refused: [pulse(G4, 100, 40), pulse(C4, 170)],
  /** Three and two, as the standard's high priority. */
  alarm: [pulse(C5, 120, 80), pulse(C5, 120, 80), pulse(C5, 120, 250), pulse(C5, 120, 80), pulse(C5, 120)],
};

/** Level of each harmonic of the pulse frequency, the first being itself, in decibels below it. */
export const harmonicsDb = [0, -3, -5, -7, -9, -11] as const;
/** Share of the pulse that rises, and the same that falls. */
export const riseShare = 0.2;
