import { describe, expect, it } from "vitest";
import { addressWords, commandIds } from "../intent/phrases";
import { DeviationCode, DiscrepancyReason, Phase, RefusalReason } from "../session/fact";
import { eventIds } from "../session/protocol";
import { en } from "./en";
import { phrasebookTexts } from "./everyText";
import { sayHowLong, sayTimeUp, sayWipedEarly } from "./sayClock";
import { sayDeviation, sayEvent, sayKept, sayNotKept, sayRefused } from "./sayNotice";
import { askClose, askItem, askPhrase, askSharps, askUndo, sayFirstAid } from "./sayQuestion";
import { sayStep, sayWhatLeft } from "./sayStep";
import { together } from "./together";
import { textOf, wordCount } from "./utterance";

const chair = { id: "chair", calledAs: { en: "chair" } };
const lamp = { id: "lamp", calledAs: { en: "lamp" } };
const tray = { id: "tray", calledAs: { en: "tray" } };
const step = (say: string, caution?: string) => ({
  id: "s",
  kind: "check" as const,
  say: { en: say },
  show: { en: say },
  ...(caution ? { caution: { en: caution } } : {}),
  effects: [],
  handsOnSec: 5,
  skippable: true,
});

describe("what the companion says", () => {
  it("asks at time up whether the surface stayed wet", () => {
    expect(textOf(sayTimeUp(en, [chair]))).toBe("Chair: time. Stayed wet?");
  });

  it("says together what falls together, each item once", () => {
    const said = together(en, [sayTimeUp(en, [chair]), sayKept(en, "lot"), sayTimeUp(en, [lamp, chair])]);
    expect(said.map(textOf)).toEqual(["Chair and lamp: time. Stayed wet?", "Lot kept."]);
    expect(textOf(sayTimeUp(en, [chair, lamp, tray]))).toBe("Chair, lamp and tray: time. Stayed wet?");
  });

  it("answers an early wipe with what was missing, rounded up", () => {
    expect(textOf(sayWipedEarly(en, 60_000, null))).toBe("One minute short, wet it once more.");
    expect(textOf(sayWipedEarly(en, 60_001, chair))).toBe("Chair: one and a half minutes short, wet it once more.");
    expect(textOf(sayWipedEarly(en, 1, null))).toBe("Ten seconds short, wet it once more.");
  });

  it("tells how long, the soonest first, and never calls a surface ready", () => {
    const clocks = [
      { item: chair, leftMs: 130_000 },
      { item: lamp, leftMs: 0 },
      { item: tray, leftMs: 31_000 },
    ];
    expect(textOf(sayHowLong(en, clocks))).toBe(
      "Lamp: time is up. Stayed wet? Tray: forty seconds. Chair: two and a half minutes.",
    );
    expect(textOf(sayHowLong(en, []))).toBe("No clock runs.");
  });

  it("reads the sharps back", () => {
    expect(textOf(askSharps(en, 3, 3))).toBe("Three opened. Are three in the container? To confirm: I vouch for that.");
    expect(textOf(askSharps(en, 3, 2))).toBe("Three opened. Are two in the container? To confirm: I vouch for that.");
    expect(textOf(askSharps(en, 1, 1))).toBe("One opened. Is one in the container? To confirm: I vouch for that.");
  });

  it("names one item at a time when a report needs one", () => {
    expect(textOf(askItem(en, lamp, true))).toBe("Which one? Lamp?");
    expect(textOf(askItem(en, tray, false))).toBe("Tray?");
  });

  it("reads back the close, with a difference first", () => {
    expect(textOf(askClose(en, { balanced: true, sharpsOpened: 3, deviations: 2, stepsLeftOut: 1 }))).toBe(
      "Close and seal? Three sharps opened, all accounted for. Two deviations. One step left out. To confirm: I vouch for that.",
    );
    expect(textOf(askClose(en, { balanced: false, sharpsOpened: 3, deviations: 0, stepsLeftOut: 0 }))).toBe(
      "Close and seal? The sharps do not balance. To confirm: I vouch for that.",
    );
  });

  it("puts first aid before any question", () => {
    const text = textOf(sayFirstAid(en));
    expect(text.indexOf("Wash the wound")).toBeLessThan(text.indexOf("End the session?"));
  });

  it("reads a caution only in the careful mode", () => {
    const gloves = step("Put on gloves.", "Dry hands first.");
    expect(textOf(sayStep(en, [gloves], "careful"))).toBe("Put on gloves. Dry hands first.");
    expect(textOf(sayStep(en, [gloves, step("Check the lamp.")], "brisk"))).toBe("Put on gloves. Check the lamp.");
  });

  it("counts what is left and leaves out what is none", () => {
    expect(textOf(sayWhatLeft(en, { steps: 12, notReady: [], outOfUse: [], sharpsOut: 1 }))).toBe(
      "Twelve steps left. One sharp is out.",
    );
  });

  it("names what is not yet safe, five by name and the rest counted", () => {
    const left = (...notReady: (typeof chair)[]) =>
      textOf(sayWhatLeft(en, { steps: 1, notReady, outOfUse: [], sharpsOut: 0 }));
    expect(left(chair, lamp)).toBe("One step left. Not ready yet: chair and lamp.");
    const many = ["a", "b", "c", "d"].map((en) => ({ id: en, calledAs: { en } }));
    expect(left(chair, ...many, lamp, tray)).toBe("One step left. Not ready yet: chair, a, b, c, d, and two more.");
  });

  it("says the reason and the way on for every refusal", () => {
    const said = RefusalReason.options.map((reason) => textOf(sayRefused(en, reason, null)));
    expect(said.filter((text) => (text.match(/[.!?]( |$)/g)?.length ?? 0) < 2)).toEqual([]);
  });

  it("names the item of every refusal and deviation that has one", () => {
    const said = [
      ...RefusalReason.options.map((reason) => sayRefused(en, reason, chair)),
      ...DeviationCode.options.map((code) => sayDeviation(en, code, chair)),
    ].map(textOf);
    expect(said.filter((text) => !text.startsWith("Chair: "))).toEqual([]);
  });

  it("echoes in at most three words", () => {
    const echoes = [
      ...eventIds.map((event) => sayEvent(en, event)),
      ...Object.keys(en.kept).map((kept) => sayKept(en, kept as keyof typeof en.kept)),
    ];
    expect(echoes.filter((echo) => wordCount(echo) > 3)).toEqual([]);
  });

  it("begins with 'not kept' when writing failed", () => {
    expect(textOf(sayNotKept(en, "storageFull"))).toMatch(/^Not kept\./);
    expect(textOf(sayNotKept(en, "writeFailed"))).toMatch(/^Not kept\./);
  });

  it("asks about every phrase and every undo by name", () => {
    expect(new Set(commandIds.map((command) => textOf(askPhrase(en, command)))).size).toBe(commandIds.length);
    expect(textOf(askUndo(en, "wiped"))).toBe("Undo the wipe? To confirm: I vouch for that.");
  });

  it("never says an address word, so that it cannot call itself", () => {
    const said = phrasebookTexts(en).filter((text) => !addressWords.some((word) => word === text));
    const heard = said.filter((text) => addressWords.some((word) => text.toLowerCase().includes(word)));
    expect(heard).toEqual([]);
  });

  it("keeps slots out of sentences that take none", () => {
    expect(phrasebookTexts(en).filter((text) => /[{}]/.test(text))).toEqual([]);
  });

  it("has an entry for every code of the session", () => {
    expect(Object.keys(en.phase)).toEqual(Phase.options);
    expect(Object.keys(en.ask.discrepancy.reason)).toEqual(DiscrepancyReason.options);
  });
});

describe("durations in words", () => {
  it.each([
    [1, "ten seconds"],
    [50_000, "fifty seconds"],
    [50_001, "one minute"],
    [60_001, "one and a half minutes"],
    [600_000, "ten minutes"],
    [600_001, "eleven minutes"],
    [3_600_000, "sixty minutes"],
    [3_600_001, "more than an hour"],
  ])("%d ms is said as %s, never too short", (ms, words) => {
    expect(en.duration(ms)).toBe(words);
  });
});
