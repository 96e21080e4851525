import { expect, test } from "vitest";
import { machine } from "./noises";
import { addressIn, type Material, soundOf } from "./stretches";

const tone = Float32Array.from({ length: 16_000 }, (_, n) => Math.sin(n / 5));
const saying = (...texts: readonly string[]): Material => ({
  ...{ voices: [], people: [], machine, music: null, babble: machine },
  announcements: texts.map((text) => ({ text, sound: tone })),
});

test("another station never says this one's address word by itself, for it answers to another", () => {
  const stretch = { kind: "announcements", seed: 3 } as const;
  const [mine, theirs] = [addressIn(stretch), addressIn({ ...stretch, seed: 4 })];
  expect(soundOf(stretch, saying(mine))).toBeNull();
  expect(soundOf(stretch, saying(mine, theirs))).toEqual(soundOf(stretch, saying(theirs)));
});
