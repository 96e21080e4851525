import { describe, expect, it } from "vitest";
import { cueIds, cues } from "../../cues/cues";
import { renderCue } from "./cues";
import { readWav } from "./wav";

/** Power of one frequency (Goertzel 1958), in decibels. */
function levelDb(samples: Float32Array, rateHz: number, frequencyHz: number): number {
  const turn = 2 * Math.cos((2 * Math.PI * frequencyHz) / rateHz);
  let [one, two] = [0, 0];
  for (const x of samples) [one, two] = [x + turn * one - two, one];
  return 10 * Math.log10((one * one + two * two - turn * one * two) / samples.length ** 2);
}

describe("earcons", () => {
  it.each(cueIds)("%s has four harmonics in 300-4000 Hz within 15 dB of its pulse (IEC 60601-1-8)", (cue) => {
    const first = cues[cue][0] ?? { frequencyHz: 0, pulseMs: 0 };
    const { rateHz, samples } = renderCue(cue);
    const pulse = samples.slice(0, Math.round((first.pulseMs / 1_000) * rateHz));
    const pulseDb = levelDb(pulse, rateHz, first.frequencyHz);
    const harmonics = Array.from({ length: 14 }, (_, i) => (i + 2) * first.frequencyHz).filter(
      (hz) => hz >= 300 && hz <= 4_000,
    );
    const strong = harmonics.filter((hz) => Math.abs(levelDb(pulse, rateHz, hz) - pulseDb) <= 15);
    expect(first.frequencyHz).toBeGreaterThanOrEqual(150);
    expect(first.frequencyHz).toBeLessThanOrEqual(1_000);
    expect(strong.length).toBeGreaterThanOrEqual(4);
  });

  it.each(cueIds)("%s is served as it is rendered, within one step of 16 bits", (cue) => {
    const served = readWav(`public/cues/${cue}.wav`);
    const rendered = renderCue(cue).samples;
    expect(served.samples.length).toBe(rendered.length);
    expect(Math.max(...rendered.map((x, i) => Math.abs(x - (served.samples[i] ?? 0))))).toBeLessThan(1 / 16_000);
  });

  it("acknowledges in under a tenth of a second", () => {
    const { rateHz, samples } = renderCue("heard");
    expect(samples.length / rateHz).toBeLessThan(0.1);
  });
});
