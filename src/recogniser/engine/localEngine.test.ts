import { describe, expect, onTestFinished, test, vi } from "vitest";
import { commandIds } from "../../intent/phrases";
import { polyfillSpeechRecognition, type SpeechRecognitionErrorEvent, type SpeechRecognitionEvent } from "../webSpeech";
import { speechRecognitionOn } from "../webSpeech/speechRecognition";
import { LocalEngine } from "./localEngine";
import { scriptedEar, scriptedSource, settled } from "./scripted";

const understood = {
  kind: "understood",
  address: "station",
  command: "done",
  confidence: 0.9,
  permitted: true,
  atMs: 900,
} as const;
const unsure = {
  kind: "unsure",
  address: "station",
  candidates: ["done", "back"],
  confidences: [0.5, 0.4],
  atMs: 900,
} as const;
const word = (ms: number) => Float32Array.from({ length: ms * 16 }, (_, n) => 0.3 * Math.sin(n / 2));
const silence = (ms: number) => new Float32Array(ms * 16);

/** A recogniser on a scripted microphone and a scripted ear, with everything it fires written down. */
function bench() {
  const source = scriptedSource();
  const ear = scriptedEar();
  const engine = new LocalEngine({ source, ear: () => ear, address: "station" });
  const Recognition = speechRecognitionOn(engine);
  const recognition = new Recognition();
  recognition.lang = "en-GB";
  const fired: string[] = [];
  const results: SpeechRecognitionEvent[] = [];
  const errors: string[] = [];
  const types = ["start", "audiostart", "soundstart", "speechstart", "speechend", "soundend", "audioend", "end"];
  for (const type of [...types, "result", "nomatch", "error"])
    recognition.addEventListener(type, () => fired.push(type));
  recognition.onresult = (event) => results.push(event);
  recognition.onnomatch = (event) => results.push(event);
  recognition.onerror = (event: SpeechRecognitionErrorEvent) => errors.push(event.error);
  return { source, ear, engine, Recognition, recognition, fired, results, errors };
}
async function ready() {
  const parts = bench();
  void parts.engine.install("en");
  parts.ear.report({ type: "ready", digest: "00", descriptionDigest: "11", trained: true, isFast: true });
  await settled();
  return parts;
}

describe("SpeechRecognition on our own engine", () => {
  test("hears a phrase once and ends, in an order that the draft allows", async () => {
    const { source, ear, recognition, fired, results } = await ready();
    recognition.start();
    await settled();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    source.say({ type: "sound", samples: silence(500) });
    source.say({ type: "sound", samples: word(400) });
    ear.report({ type: "heard", run: 1, heard: understood });
    await settled();
    ear.report({ type: "finished", run: 1 });
    await settled();
    expect(fired).toEqual([
      "start",
      "audiostart",
      "soundstart",
      "speechstart",
      "result",
      "audioend",
      "speechend",
      "soundend",
      "end",
    ]);
    expect(results[0]?.results.item(0)?.item(0)).toEqual({ transcript: "station completed", confidence: 0.9 });
    expect(results[0]?.results[0]?.isFinal).toBe(true);
  });

  test("hears phrase after phrase when continuous, and their transcripts join into one", async () => {
    const { source, ear, recognition, results } = await ready();
    recognition.continuous = true;
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    ear.report({ type: "heard", run: 1, heard: understood });
    ear.report({ type: "heard", run: 1, heard: { ...understood, command: "back" } });
    await settled();
    const last = results.at(-1);
    expect(last?.resultIndex).toBe(1);
    expect([...(last?.results ?? [])].map((result) => result[0]?.transcript).join("")).toBe(
      "station completed station previous step",
    );
  });

  test("answers nomatch with both candidates when unsure between two", async () => {
    const { source, ear, recognition, fired, results } = await ready();
    recognition.continuous = true;
    recognition.maxAlternatives = 2;
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    ear.report({ type: "heard", run: 1, heard: unsure });
    await settled();
    expect(fired.at(-1)).toBe("nomatch");
    expect([...(results[0]?.results[0] ?? [])].map((one) => one.transcript)).toEqual([
      "station completed",
      "station previous step",
    ]);
  });

  test("shows what is still being heard as an interim result, which the final overwrites", async () => {
    const { source, ear, recognition, results } = await ready();
    recognition.continuous = true;
    recognition.interimResults = true;
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    expect(ear.orders.at(-1)).toMatchObject({ type: "open", interim: true });
    ear.report({ type: "rising", run: 1, rising: { command: "back", confidence: 0.4 } });
    ear.report({ type: "rising", run: 1, rising: { command: "done", confidence: 0.6 } });
    ear.report({ type: "heard", run: 1, heard: understood });
    ear.report({ type: "rising", run: 1, rising: { command: "back", confidence: 0.4 } });
    ear.report({ type: "rising", run: 1, rising: null });
    await settled();
    const shown = results.map(({ resultIndex, results: all }) => [
      resultIndex,
      [...all].map((result) => `${result.isFinal ? "final" : "interim"}: ${result[0]?.transcript}`),
    ]);
    expect(shown).toEqual([
      [0, ["interim: station previous step"]],
      [0, ["interim: station completed"]],
      [0, ["final: station completed"]],
      [1, ["final: station completed", "interim:  station previous step"]],
      [1, ["final: station completed"]],
    ]);
  });

  test("asks for no interim results unless they are wanted", async () => {
    const { source, ear, recognition } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    expect(ear.orders.at(-1)).toMatchObject({ type: "open", interim: false });
  });

  test("may be started again in its error event, before its end", async () => {
    const { source, recognition, fired } = await ready();
    recognition.onerror = () => recognition.start();
    recognition.start();
    await settled();
    source.say({ type: "refused", reason: "no-device", message: "none" });
    await settled();
    expect(fired).toEqual(["error", "end"]);
    expect(() => recognition.start()).toThrow(expect.objectContaining({ name: "InvalidStateError" }));
  });

  test("tells the ear at once what is allowed, before and during a run", async () => {
    const { source, ear, recognition } = await ready();
    recognition.allow(["done"], ["close"]);
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    recognition.allow(["accident"]);
    const sets = ear.orders.flatMap((order) => ("permitted" in order ? [[order.permitted, order.refusable]] : []));
    expect(sets).toEqual([
      [["done"], ["close"]],
      [["accident"], []],
    ]);
  });

  test.each([
    ["permission is refused", { type: "refused", reason: "denied", message: "no" }, "not-allowed"],
    ["there is no microphone", { type: "refused", reason: "no-device", message: "none" }, "audio-capture"],
    ["the microphone is pulled out", { type: "lost", reason: "ended" }, "audio-capture"],
  ] as const)("fires an error and ends when %s", async (_, event, code) => {
    const { source, recognition, fired, errors } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    source.say(event);
    await settled();
    expect(errors).toEqual([code]);
    expect(fired.at(-1)).toBe("end");
  });

  test("gives up when one answer is wanted and nobody speaks", async () => {
    const { source, recognition, errors } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    source.say({ type: "sound", samples: silence(8000) });
    expect(errors).toEqual(["no-speech"]);
  });

  test("passes lost sound on to the ear as a gap", async () => {
    const { source, ear, recognition } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    source.say({ type: "dropped", lostMs: 300, totalMs: 300, isHere: true });
    expect(ear.orders.at(-1)).toEqual({ type: "gap", lostMs: 300 });
  });

  test("may be started again after its end, and old reports do not reach the new run", async () => {
    const { source, ear, recognition, fired } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    recognition.abort();
    await settled();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    ear.report({ type: "heard", run: 1, heard: understood });
    await settled();
    expect(fired).not.toContain("result");
    expect(fired.filter((type) => type === "end").length).toBe(1);
  });

  test("says nothing of what it heard once aborted", async () => {
    const { source, ear, recognition, fired } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    recognition.abort();
    ear.report({ type: "heard", run: 1, heard: understood });
    await settled();
    expect(fired).toEqual(["start", "audiostart", "audioend", "end"]);
  });

  test("still answers for what it had heard when stopped", async () => {
    const { source, ear, recognition, fired } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    recognition.stop();
    await settled();
    ear.report({ type: "heard", run: 1, heard: understood });
    ear.report({ type: "finished", run: 1 });
    await settled();
    expect(fired).toEqual(["start", "audiostart", "audioend", "result", "end"]);
  });
});

describe("the rules of the Web Speech API", () => {
  test("start while started is an InvalidStateError; stop and abort when stopped do nothing", async () => {
    const { recognition } = await ready();
    recognition.stop();
    recognition.abort();
    recognition.start();
    expect(() => recognition.start()).toThrow(expect.objectContaining({ name: "InvalidStateError" }));
  });

  test("a document that is not fully active may not start, ask or install", async () => {
    const { recognition, Recognition } = await ready();
    vi.stubGlobal("document", { defaultView: null, documentElement: { lang: "en" } });
    onTestFinished(() => void vi.unstubAllGlobals());
    const invalid = expect.objectContaining({ name: "InvalidStateError" });
    expect(() => recognition.start()).toThrow(invalid);
    await expect(Recognition.available({ langs: ["en"] })).rejects.toEqual(invalid);
    await expect(Recognition.install({ langs: ["en"] })).rejects.toEqual(invalid);
  });

  test.each([
    ["video", "live"],
    ["audio", "ended"],
  ])("a %s track that is %s cannot be listened to", async (kind, readyState) => {
    const { recognition } = await ready();
    const track = { kind, readyState } as MediaStreamTrack;
    expect(() => recognition.start(track)).toThrow(expect.objectContaining({ name: "InvalidStateError" }));
  });

  test("a language that is not ours is an error of its own, then the end", async () => {
    const { recognition, fired, errors } = await ready();
    recognition.lang = "fr-FR";
    recognition.start();
    await settled();
    expect(errors).toEqual(["language-not-supported"]);
    expect(fired).toEqual(["error", "end"]);
  });

  test("with processLocally, what cannot be done on the device is service-not-allowed, and nothing starts", async () => {
    const { recognition, fired, errors } = await ready();
    recognition.lang = "fr-FR";
    recognition.processLocally = true;
    recognition.start();
    await settled();
    expect(errors).toEqual(["service-not-allowed"]);
    expect(fired).toEqual(["error"]);
  });

  test("availability is the worst of the languages asked for", async () => {
    const { Recognition } = await ready();
    const ask = (langs: readonly string[]) => Recognition.available({ langs, processLocally: true });
    expect(await Promise.all([ask(["en-GB"]), ask(["en", "fr"]), ask([])])).toEqual([
      "available",
      "unavailable",
      "unavailable",
    ]);
  });

  test("a model is fetched by install, is downloading while it is read, and install waits for it", async () => {
    const { Recognition, ear } = bench();
    expect(await Recognition.available({ langs: ["en"], processLocally: true })).toBe("downloadable");
    const installed = Recognition.install({ langs: ["en"] });
    expect(await Recognition.available({ langs: ["en"], processLocally: true })).toBe("downloading");
    ear.report({ type: "ready", digest: "00", descriptionDigest: "11", trained: true, isFast: true });
    expect(await installed).toBe(true);
  });

  test("a model that cannot be used is unavailable, and install says false", async () => {
    const { Recognition, ear } = bench();
    const installed = Recognition.install({ langs: ["en"] });
    ear.report({ type: "unusable", code: "wrong-digest", message: "changed" });
    expect(await installed).toBe(false);
    expect(await Recognition.available({ langs: ["en"], processLocally: true })).toBe("unavailable");
  });

  test("with such a model a run fails at once, and never seems to listen", async () => {
    const { engine, source, ear } = bench();
    void engine.install("en");
    ear.report({ type: "unusable", code: "wrong-digest", message: "changed" });
    await settled();
    const events: string[] = [];
    engine.open({ lang: "en", continuous: true, track: null }, (event) => events.push(event.type));
    await settled();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    expect(events).toEqual(["failed", "ended"]);
    expect(ear.orders).toEqual([]);
  });

  test("is loaded anew when it is asked for after it could not be used", async () => {
    const { engine, ear } = bench();
    const first = engine.modelOf("en");
    ear.report({ type: "unusable", code: "unreadable", message: "not found" });
    expect(await first).toBeNull();
    engine.forgetUnusable("en");
    expect(engine.availability("en")).toBe("downloadable");
    const second = engine.modelOf("en");
    ear.report({ type: "ready", digest: "00", descriptionDigest: "11", trained: true, isFast: true });
    expect(await second).toBe("00");
  });

  test("each language has an ear of its own, and its results are in its own words", async () => {
    const made: string[] = [];
    const [source, ear] = [scriptedSource(), scriptedEar()];
    const engine = new LocalEngine({
      source,
      address: "station",
      ear: (language) => {
        made.push(language);
        return ear;
      },
    });
    const Recognition = speechRecognitionOn(engine);
    const recognition = new Recognition();
    const heard: (string | undefined)[] = [];
    recognition.onresult = ({ results }) => heard.push(results[0]?.[0]?.transcript);
    recognition.lang = "es-MX";
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    ear.report({ type: "heard", run: 1, heard: understood });
    await settled();
    expect([made, heard]).toEqual([["es"], ["estación completado"]]);
  });

  test("a tag that is not a language is a SyntaxError", async () => {
    const { Recognition } = await ready();
    await expect(Recognition.available({ langs: ["not a tag"] })).rejects.toMatchObject({ name: "SyntaxError" });
  });

  test("is put in place only where the browser has none", async () => {
    const { engine } = await ready();
    const [bare, full] = [{}, { SpeechRecognition: "theirs" }];
    expect([polyfillSpeechRecognition(bare, engine), polyfillSpeechRecognition(full, engine)]).toEqual([true, false]);
    expect(Object.keys(Object.getOwnPropertyDescriptors(bare))).toContain("SpeechRecognitionPhrase");
    expect(full.SpeechRecognition).toBe("theirs");
  });

  test("listens for everything until told otherwise", async () => {
    const { source, ear, recognition } = await ready();
    recognition.start();
    source.say({ type: "opened", rateHz: 16_000, label: "script", processing: source.processing });
    expect(ear.orders[0]).toMatchObject({ type: "open", permitted: commandIds });
  });
});
