import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { listenedFor } from "../../machines/session/listenedFor";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { anySaid } from "../../tests/support/anyEvents";
import { begun, inputFor, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { announce } from "./announce";
import { optionsNow } from "./options";
import { bookFor } from "./phrasebooks";
import { textOf } from "./utterance";

const options: SessionEvent = { type: "ask.options" };
const saidIn = (language: string, ...events: readonly SessionEvent[]): string => {
  const { state } = told(begun(inputFor(smallProtocol)), ...events);
  const moment = { kept: true, event: options, way: { by: "touch" }, before: state, after: state, facts: [] } as const;
  return announce(bookFor(language), moment).map(textOf).join(" ");
};

describe("what may be said now", () => {
  test("is told in a few phrases, in the words that are listened for", () => {
    expect(saidIn("en")).toMatch(/^You may say: completed, .* and .*\. The screen shows the rest\.$/);
    expect(saidIn("es")).toMatch(/^Puedes decir: completado, .* y .*\./);
  });

  test("while a reason is asked for, is the reasons", () => {
    expect(saidIn("en", { type: "step.done" }, { type: "step.done" }, { type: "step.skip" })).toBe(
      "You may say: definitely not, doesn't apply here, nothing in stock and my own decision.",
    );
  });

  property.prop([fc.array(anySaid, { maxLength: 40 })])(
    "is never more than five phrases, all of them listened for",
    (events) => {
      const { state } = told(begun(inputFor(smallProtocol)), ...events);
      const { commands } = optionsNow(state);
      expect(commands.length).toBeLessThanOrEqual(5);
      expect(commands.filter((command) => !listenedFor(state).has(command))).toEqual([]);
    },
  );
});
