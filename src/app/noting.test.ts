import { describe, expect, test } from "vitest";
import { createScriptedVoice } from "../../tests/support/scriptedVoice";
import { begun, inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { type CommandId, commandIds } from "../intent/phrases";
import type { Heard } from "../recogniser/heard";
import type { Moment } from "../session/keeper";
import { createCompanion } from "./companion";

/** A companion in the middle of a set-up whose note taker is on or off. */
function companion(isOn: boolean, begins = true) {
  const { state } = begun(inputFor(smallProtocol));
  const voice = createScriptedVoice({ format: "gloveside-clips", formatVersion: 1, language: "en", clips: {} });
  const asked: string[] = [];
  const notes = {
    isOn,
    begin: () => {
      asked.push("begin");
      return begins;
    },
  };
  const made = createCompanion({ state, pen: { append: async () => ({ ok: true }) }, voice, notes });
  const moments: Moment["event"]["type"][] = [];
  made.onMoment(({ event }) => moments.push(event.type));
  return { made, moments, asked };
}
const said = (command: CommandId): Heard => ({
  ...{ kind: "understood", address: "station", command, confidence: 0.95, permitted: true, atMs: 0 },
});
const unsure: Heard = {
  ...{ kind: "unsure", address: "station", candidates: ["done", "wiped"], confidences: [0.5, 0.4], atMs: 0 },
};

describe("while a note is spoken", () => {
  test("only the accident phrase is listened for", () => {
    expect([...companion(true).made.listenedFor]).toEqual(["accident"]);
    expect(companion(false).made.listenedFor.size).toBeGreaterThan(5);
  });

  test("no phrase acts but the accident's, even one that was heard a breath before", async () => {
    const { made, moments } = companion(true);
    for (const command of commandIds) await made.hear(said(command));
    await made.hear(unsure);
    expect(moments).toEqual(["exposure.reported"]);
  });
});

describe("the note phrase", () => {
  test("begins a recording instead of marking an event", async () => {
    const { made, moments, asked } = companion(false);
    await made.hear(said("note"));
    expect([asked, moments]).toEqual([["begin"], []]);
  });

  test("marks the event where nothing can be recorded", async () => {
    const { made, moments, asked } = companion(false, false);
    await made.command("note", { by: "touch" });
    expect([asked, moments]).toEqual([["begin"], ["event.reported"]]);
  });
});
