import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import type { Engine } from "./engine";
import { SpeechRecognitionPhrase, SpeechRecognitionPhraseList } from "./phrases";
import { speechRecognitionOn } from "./speechRecognition";
import {
  SpeechRecognitionAlternative,
  SpeechRecognitionErrorEvent,
  SpeechRecognitionEvent,
  SpeechRecognitionResult,
  SpeechRecognitionResultList,
} from "./vocabulary";

const one = (transcript: string, confidence: number) => new SpeechRecognitionAlternative(transcript, confidence);
const deaf: Engine = {
  biasesTowardsPhrases: false,
  availability: () => "available",
  install: async () => true,
  open: () => ({ stop() {}, abort() {}, allow() {} }),
};

describe("phrases for biasing", () => {
  property.prop([fc.double({ min: 0, max: 10, noNaN: true })])("take a boost from 0 to 10", (boost) => {
    expect(new SpeechRecognitionPhrase("station", boost).boost).toBe(Math.fround(boost));
  });

  test.each([-0.1, 10.1, 1e9])("refuse a boost of %d with a SyntaxError", (boost) => {
    expect(() => new SpeechRecognitionPhrase("station", boost)).toThrow(
      expect.objectContaining({ name: "SyntaxError" }),
    );
  });

  test("boost by 1 unless told otherwise", () => {
    expect(new SpeechRecognitionPhrase("station").boost).toBe(1);
  });

  test("are kept in a list that refuses an index outside it", () => {
    const list = new SpeechRecognitionPhraseList([]);
    list.addItem(new SpeechRecognitionPhrase("station"));
    expect(list.item(0).phrase).toBe("station");
    expect(() => list.removeItem(1)).toThrow(RangeError);
    list.removeItem(0);
    expect(list.length).toBe(0);
  });

  test("are refused by an engine that listens for a closed set; an empty list is not", () => {
    const recognition = new (speechRecognitionOn(deaf))();
    const some = new SpeechRecognitionPhraseList([new SpeechRecognitionPhrase("station")]);
    expect(() => Object.assign(recognition, { phrases: some })).toThrow(
      expect.objectContaining({ error: "phrases-not-supported" }),
    );
    recognition.phrases = new SpeechRecognitionPhraseList([]);
    expect(recognition.phrases.length).toBe(0);
  });
});

describe("results", () => {
  property.prop([fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 6 })])(
    "put the surest alternative first",
    (confidences) => {
      const result = new SpeechRecognitionResult(
        confidences.map((c) => one("x", c)),
        true,
      );
      expect([...result].map((a) => a.confidence)).toEqual(confidences.toSorted((a, b) => b - a));
    },
  );

  test("read by index and by item, with null past the end", () => {
    const list = new SpeechRecognitionResultList([new SpeechRecognitionResult([one("station completed", 0.9)], true)]);
    expect([list.length, list[0], list.item(1)]).toEqual([1, list.item(0), null]);
  });

  test("travel in events that neither bubble nor can be cancelled", () => {
    const event = new SpeechRecognitionEvent("result", { results: new SpeechRecognitionResultList([]) });
    const error = new SpeechRecognitionErrorEvent("error", { error: "aborted" });
    expect([event.bubbles, event.cancelable, event.resultIndex, error.error, error.message]).toEqual([
      false,
      false,
      0,
      "aborted",
      "",
    ]);
  });
});

describe("a SpeechRecognition object", () => {
  test("starts with the draft's defaults", () => {
    const { lang, continuous, interimResults, maxAlternatives, processLocally } = new (speechRecognitionOn(deaf))();
    expect([lang, continuous, interimResults, maxAlternatives, processLocally]).toEqual(["", false, false, 1, false]);
  });

  test("calls its handler once, the latest one set, and none after null", () => {
    const recognition = new (speechRecognitionOn(deaf))();
    const calls: string[] = [];
    recognition.onend = () => calls.push("first");
    recognition.onend = () => calls.push("second");
    recognition.dispatchEvent(new Event("end"));
    recognition.onend = null;
    recognition.dispatchEvent(new Event("end"));
    expect(calls).toEqual(["second"]);
  });
});
