import { describe, expect, test } from "vitest";
import { readWav } from "../recogniser/sound/wav";
import { longestMs, SpokenNote } from "./spokenNote";

const rateHz = 48_000;
const chunk = 4_800;
/** Hiss of a room, and a voice far above it; 100 ms at a time. */
let seed = 7;
const noise = (): number => {
  seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
  return seed / 1_073_741_824 - 1;
};
const hiss = () => Float32Array.from({ length: chunk }, () => 0.004 * noise());
const voice = () => Float32Array.from({ length: chunk }, (_, at) => 0.3 * Math.sin(at / 20) + 0.004 * noise());

/** As people talk: words with breaths between them. */
const talk = () => {
  let turn = 0;
  return () => (turn++ % 5 === 4 ? hiss() : voice());
};

/** @returns why it ended and after how long, in milliseconds. */
function said(note: SpokenNote, ...parts: readonly (readonly [() => Float32Array, number])[]) {
  for (const [sound, ms] of parts)
    for (let at = 0; at < ms; at += 100) {
      const ending = note.take(sound());
      if (ending !== null) return [ending, note.lengthMs];
    }
  return [null, note.lengthMs];
}

describe("a spoken note", () => {
  test("ends by itself two and a half seconds after the voice", () => {
    const [ending, ms] = said(new SpokenNote(rateHz), [hiss, 500], [voice, 3_000], [hiss, 10_000]);
    expect(ending).toBe("silence");
    // The voice counts on for 0.6 s.
    expect(ms).toBeGreaterThanOrEqual(3_500 + 2_500);
    expect(ms).toBeLessThanOrEqual(3_500 + 2_500 + 800);
  });

  test("goes on over a pause for thought", () => {
    expect(said(new SpokenNote(rateHz), [hiss, 500], [voice, 2_000], [hiss, 2_000], [voice, 2_000])).toEqual([
      null,
      6_500,
    ]);
  });

  test("is full after half a minute, however long somebody talks", () => {
    const note = new SpokenNote(rateHz);
    expect(said(note, [hiss, 300], [talk(), 40_000])).toEqual(["full", longestMs]);
    const wav = readWav(note.finish()?.wav ?? new Uint8Array());
    expect(wav.ok && wav.sound.samples.length / 16_000).toBeCloseTo(30, 1);
  });

  test("is nothing where nobody speaks, however loud the room", () => {
    const machine = () => Float32Array.from({ length: chunk }, (_, at) => 0.2 * Math.sin(at / 9) + 0.05 * noise());
    expect(said(new SpokenNote(rateHz), [hiss, 20_000])[0]).toBe("nobody");
    expect(said(new SpokenNote(rateHz), [machine, 20_000])[0]).toBe("nobody");
  });

  test("is kept as mono 16-bit WAV at 16 kHz that holds what was said", () => {
    const note = new SpokenNote(rateHz);
    said(note, [voice, 1_000]);
    const made = note.finish();
    const wav = readWav(made?.wav ?? new Uint8Array());
    if (!wav.ok) return expect.fail(wav.message);
    expect(made?.lengthMs).toBe(1_000);
    expect(wav.sound.rateHz).toBe(16_000);
    const loudest = wav.sound.samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(loudest).toBeGreaterThan(0.25);
    expect(new DataView((made?.wav ?? new Uint8Array()).buffer).getUint16(34, true)).toBe(16);
  });

  test("shorter than a slip of the hand is none", () => {
    const note = new SpokenNote(rateHz);
    said(note, [voice, 200]);
    expect(note.finish()).toBeNull();
  });
});
