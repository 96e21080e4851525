/** The canceller against a room of our own making: delay, decay, noise, and somebody who speaks meanwhile. */
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../rehearsal/random";
import { EchoCanceller } from "./echoCanceller";
import { EchoFree } from "./echoFree";

const rateHz = 16_000;
const block = EchoCanceller.blockSamples;

/** Noise in bursts with a falling spectrum, about as speech has it. */
function talk(seconds: number, seed: number): Float32Array {
  const random = seededRandom(seed);
  let low = 0;
  return Float32Array.from({ length: seconds * rateHz }, (_, n) => {
    low = 0.85 * low + 0.3 * (random() - 0.5);
    const syllable = Math.max(0, Math.sin((2 * Math.PI * 3 * n) / rateHz));
    return low * syllable;
  });
}
function inTheRoom(played: Float32Array): Float32Array {
  const heard = new Float32Array(played.length);
  for (const [ms, gain] of [
    [80, 0.6],
    [97, -0.3],
    [131, 0.2],
    [188, -0.1],
  ] as const) {
    const delay = (ms * rateHz) / 1000;
    for (let n = delay; n < heard.length; n++) heard[n] = (heard[n] as number) + gain * (played[n - delay] as number);
  }
  return heard;
}
const power = (sound: Float32Array) => sound.reduce((sum, x) => sum + x * x, 0) / sound.length;
const toDb = (ratio: number) => 10 * Math.log10(ratio);
function without(heard: Float32Array, played: Float32Array | null, cut = 1024): Float32Array {
  const echo = new EchoFree();
  const parts: Float32Array[] = [];
  for (let at = 0; at < heard.length; at += cut) {
    parts.push(echo.take(heard.slice(at, at + cut), played?.slice(at, at + cut) ?? null));
  }
  return Float32Array.from(parts.flatMap((part) => [...part]));
}

describe("the echo canceller", () => {
  const played = talk(12, 1);
  const echo = inTheRoom(played);

  test("takes more than 20 dB of the echo away once it knows the room", () => {
    const left = without(echo, played);
    const from = 8 * rateHz;
    expect(toDb(power(echo.subarray(from)) / power(left.subarray(from)))).toBeGreaterThan(20);
  });

  test("leaves the artist who speaks at the same time as they are, and goes on knowing the room", () => {
    const artist = talk(12, 2).map((x, n) => (n > 8 * rateHz && n < 10 * rateHz ? x : 0));
    const both = echo.map((x, n) => x + (artist[n] as number));
    const left = without(both, played);
    const [from, to] = [8.2 * rateHz, 9.8 * rateHz];
    const apart = left.subarray(from, to).map((x, n) => x - (artist[from + n] as number));
    expect(toDb(power(artist.subarray(from, to)) / power(apart))).toBeGreaterThan(12);
    const after = 11 * rateHz;
    expect(toDb(power(echo.subarray(after)) / power(left.subarray(after)))).toBeGreaterThan(18);
  });

  test("changes nothing while nothing is played", () => {
    const artist = talk(2, 3);
    expect(without(artist, null)).toEqual(artist);
    expect(without(artist, new Float32Array(artist.length)).subarray(0, 1024)).toEqual(artist.subarray(0, 1024));
  });

  test("does not depend on how the sound was cut", () => {
    const [some, same] = [without(echo, played, 1024), without(echo, played, 777)];
    const whole = Math.floor(Math.min(some.length, same.length) / block) * block;
    expect(same.subarray(0, whole)).toEqual(some.subarray(0, whole));
  });
});
