import { describe, expect, it } from "vitest";
import type { Clip, ClipManifest } from "./clips";
import { heardAs } from "./heardAs";

const clip: Clip = { file: "a.mp3", startMs: 0, durationMs: 400 };
const manifest = (...texts: string[]): ClipManifest => ({
  format: "gloveside-clips",
  formatVersion: 1,
  language: "en",
  clips: Object.fromEntries(texts.map((text) => [text, clip])),
});
const heard = (text: string, clips: ClipManifest, hasLocalVoice = false) =>
  heardAs({ parts: [{ kind: "protocol", text }] }, clips, hasLocalVoice);

describe("a text that is to be spoken", () => {
  it("is heard as recorded where it has a clip", () => {
    expect(heard("Wash your hands.", manifest("wash your hands"), true)).toBe("clips");
  });

  it("is left to a voice of the device where it has none", () => {
    expect(heard("Wash both hands.", manifest("wash your hands"), true)).toBe("localVoice");
  });

  it("is heard word by word where every word has a clip, and spelled where one has not", () => {
    const words = manifest("wash", "your", "hands");
    expect(heard("Wash your hands.", words)).toBe("words");
    expect(heard("Wash ab.", manifest("wash", "a", "b"))).toBe("letters");
  });

  it("is shown only where a letter has no clip", () => {
    expect(heard("Wash 手.", manifest("wash"))).toBe("nothing");
  });
});
