import { describe, expect, it } from "vitest";
import { createScriptedVoice } from "../../tests/support/scriptedVoice";
import { type ClipManifest, clipsOf, durationMs, uncovered } from "./clips";
import { en } from "./en";
import { sayTimeUp } from "./sayClock";
import { createSpeaker, type SpeakerParts } from "./speaker";

const clip = (startMs: number, durationMs = 500) => ({ file: "a.mp3", startMs, durationMs });
const manifest: ClipManifest = {
  format: "gloveside-clips",
  formatVersion: 1,
  language: "en",
  clips: {
    chair: clip(1_000),
    and: clip(2_000),
    lamp: clip(3_000),
    "time. stayed wet?": clip(4_000, 900),
    the: clip(5_000),
    x: clip(6_000),
    y: clip(7_000),
  },
};
const chairAndLamp = sayTimeUp(en, [
  { id: "chair", calledAs: { en: "chair" } },
  { id: "lamp", calledAs: { en: "lamp" } },
]);
const free = (text: string) => ({ parts: [{ kind: "free" as const, text }] });

/** Players that note what they play, and finish at once or when told. */
function players(change: Partial<SpeakerParts> = {}) {
  const played: string[] = [];
  const parts: SpeakerParts = {
    manifest: () => manifest,
    player: {
      load: async () => ({ ok: true }),
      play: async ({ startMs }) => {
        played.push(String(startMs));
        return { ok: true };
      },
      cue: (cue) => void played.push(cue),
      stop: () => void played.push("stop"),
      setVolume: (volume) => void played.push(`volume ${volume}`),
    },
    local: () => ({ isThere: () => false, say: async () => ({ ok: true }), stop: () => undefined }),
    wait: async () => undefined,
    ...change,
  };
  const voice = createSpeaker(parts);
  const ends: string[] = [];
  voice.onEnded((turn, end) => ends.push(`${turn} ${end}`));
  const settle = () => new Promise((resolve) => setTimeout(resolve, 5));
  return { voice, played: () => played.filter((what) => !what.startsWith("volume")), all: played, ends, settle };
}

describe("the speaker", () => {
  it("tells each piece as it begins to sound", async () => {
    const told: (string | null)[] = [];
    const { voice, settle } = players();
    voice.onSounding((text) => told.push(text));
    voice.speak(7, chairAndLamp);
    await settle();
    expect(told).toEqual(["chair", "and", "lamp", ": time. Stayed wet?", null]);
  });

  it("tells that nothing sounds any more when it is cut off", async () => {
    const told: (string | null)[] = [];
    const { voice, settle } = players({ wait: () => new Promise(() => undefined) });
    voice.onSounding((text) => told.push(text));
    voice.speak(7, chairAndLamp);
    await settle();
    voice.stop();
    voice.stop();
    expect(told).toEqual(["chair", null]);
  });

  it("plays the clips of an utterance in order and says when it has ended", async () => {
    const { voice, played, ends, settle } = players();
    voice.speak(7, chairAndLamp);
    await settle();
    expect(played()).toEqual(["1000", "2000", "3000", "4000"]);
    expect(ends).toEqual(["7 ended"]);
  });

  it("spells what it has no clip for, where the system has no voice of its own", async () => {
    const { voice, played, settle } = players();
    voice.speak(1, free("the xy"));
    await settle();
    expect(played()).toEqual(["5000", "6000", "7000"]);
  });

  it("leaves free text to a local voice where there is one", async () => {
    const said: string[] = [];
    const local = {
      isThere: () => true,
      say: async (text: string) => {
        said.push(text);
        return { ok: true };
      },
      stop: () => undefined,
    };
    const { voice, played, settle } = players({ local: () => local });
    voice.speak(1, free("the xy"));
    await settle();
    expect(said).toEqual(["the xy"]);
    expect(played()).toEqual([]);
  });

  it("tells that it failed when a clip could not sound, and when nothing could be spelled", async () => {
    const silent = {
      load: async () => ({ ok: false }),
      play: async () => ({ ok: false }),
      cue: () => undefined,
      stop: () => undefined,
      setVolume: () => undefined,
    };
    const { voice, ends, settle } = players({ player: silent });
    voice.speak(1, chairAndLamp);
    await settle();
    voice.speak(2, free("ñ"));
    await settle();
    expect(ends).toEqual(["1 failed", "2 failed"]);
    expect(await voice.prepare([chairAndLamp])).toEqual(["a.mp3"]);
  });

  it("ends no turn that was stopped", async () => {
    const { voice, ends, settle } = players({ wait: () => new Promise((resolve) => setTimeout(resolve, 1)) });
    voice.speak(1, chairAndLamp);
    voice.stop();
    await settle();
    expect(ends).toEqual([]);
  });

  it("says when the volume is at its end", () => {
    const { voice, all } = players();
    expect(voice.changeVolume("louder")).toBe("louder");
    expect(voice.changeVolume("louder")).toBe("loudest");
    expect(all.at(-1)).toBe("volume 1");
    voice.duck(true);
    expect(all.at(-1)).toBe("volume 0.3");
  });
});

describe("clips of an utterance", () => {
  it("pauses where the punctuation asks for it", () => {
    expect(clipsOf(chairAndLamp, manifest).map(({ pauseBeforeMs }) => pauseBeforeMs)).toEqual([0, 20, 20, 120]);
  });

  it("lasts as long as its clips and pauses", () => {
    expect(durationMs(chairAndLamp, manifest)).toBe(500 + 20 + 500 + 20 + 500 + 120 + 900);
  });

  it("names what no clip covers", () => {
    expect(uncovered(free("the xy"), manifest)).toEqual(["the xy"]);
    expect(uncovered(chairAndLamp, manifest)).toEqual([]);
  });
});

describe("the scripted voice", () => {
  it("takes the time the clips take, and ends a turn once", () => {
    const voice = createScriptedVoice(manifest);
    const ends: number[] = [];
    voice.onEnded((turn) => ends.push(turn));
    voice.speak(1, chairAndLamp);
    voice.pass(2_559);
    expect(ends).toEqual([]);
    voice.pass(1);
    expect(ends).toEqual([1]);
    expect(voice.story).toEqual([{ atMs: 0, what: "said", text: "Chair and lamp: time. Stayed wet?" }]);
  });
});
