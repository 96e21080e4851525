import { describe, expect, test } from "vitest";
import { createScriptedVoice } from "../../tests/support/scriptedVoice";
import { begun, inputFor, today } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import type { CommandId } from "../intent/phrases";
import type { Heard } from "../recogniser/heard";
import { createCompanion } from "./companion";

/** A companion in the middle of a set-up, and the clock by which it is told of time. */
function companion() {
  const { state } = begun(inputFor(smallProtocol));
  const voice = createScriptedVoice({ format: "gloveside-clips", formatVersion: 1, language: "en", clips: {} });
  const made = createCompanion({ state, pen: { append: async () => ({ ok: true }) }, voice });
  const told: string[] = [];
  made.onMoment(({ event }) => told.push(event.type));
  let nowMs = 0;
  const tickAt = (ms: number) => {
    voice.pass(ms - nowMs);
    nowMs = ms;
    return made.tick({ wallMs: nowMs, monoMs: nowMs }, today);
  };
  const passes = async (ms: number) => {
    for (const untilMs = nowMs + ms; nowMs < untilMs; ) await tickAt(nowMs + 500);
  };
  return { made, voice, told: () => told.filter((type) => !type.startsWith("time.")), tickAt, passes };
}
const said = (command: CommandId): Heard => ({
  ...{ kind: "understood", address: "station", command, confidence: 0.95, permitted: true, atMs: 0 },
});
const far = (command: CommandId): Heard => ({
  ...{ kind: "unsure", address: "station", candidates: [command], confidences: [0.9], atMs: 0 },
});

const asks = /did you say: /i;

describe("a phrase that was not sure", () => {
  test("is asked about and does nothing until it is answered by yes, or said again", async () => {
    for (const answer of ["yes", "accident"] as const) {
      const { made, voice, told } = companion();
      await made.hear(far("accident"));
      expect(voice.story.at(-1)?.text).toMatch(asks);
      expect(told()).toEqual([]);
      await made.hear(said(answer));
      expect(told()).toEqual(["exposure.reported"]);
    }
  });

  test("is asked about after what is being said, but an accident at once", async () => {
    const toldOver = async (command: CommandId) => {
      const { made, voice } = companion();
      await made.hear(said("options"));
      expect(made.speaking).toMatch(/^You may say/);
      await made.hear(far(command));
      return voice.story.map(({ what, text }) => `${what} ${text}`).filter((line) => /^cut|did you say/i.test(line));
    };
    expect(await toldOver("done")).toEqual([]);
    expect(await toldOver("accident")).toEqual([
      expect.stringMatching(/^cut You may say/),
      "said Did you say: accident alarm?",
    ]);
  });

  test("is forgotten at no", async () => {
    const { made, told } = companion();
    await made.hear(far("accident"));
    await made.hear(said("no"));
    await made.hear(said("yes"));
    expect(told()).not.toContain("exposure.reported");
  });

  test("is forgotten eight seconds after the question was out, so that a later yes is none to it", async () => {
    const answeredAfter = async (ms: number) => {
      const { made, told, passes } = companion();
      await passes(500);
      await made.hear(far("accident"));
      await passes(ms);
      await made.hear(said("yes"));
      return told().includes("exposure.reported");
    };
    expect(await answeredAfter(7_000)).toBe(true);
    expect(await answeredAfter(20_000)).toBe(false);
  });

  test("is forgotten over time that nobody watched", async () => {
    const { made, told, tickAt } = companion();
    await tickAt(500);
    await made.hear(far("accident"));
    await tickAt(60_000);
    await made.hear(said("yes"));
    expect(told()).not.toContain("exposure.reported");
  });

  test("is forgotten when the companion asks something else: a yes answers the newer question", async () => {
    const { made, voice, told, passes } = companion();
    await passes(500);
    await made.hear(far("accident"));
    await made.command("applied", { by: "touch" });
    await passes(2_000);
    expect(voice.story.map(({ text }) => text).some((text) => /which one/i.test(text))).toBe(true);
    await made.hear(said("yes"));
    expect(told()).not.toContain("exposure.reported");
  });
});
