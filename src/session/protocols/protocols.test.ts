/** The bundled protocols as data: shape, wording, and what may never be left out. */
import { describe, expect, it } from "vitest";
import { eventIds, everyStep } from "../protocol";
import { asProtocol } from "../readProtocol";
import { bundledProtocols, protocolById } from "./index";
import { does, protocols } from "./reading";

const wordsIn = (sentence: string): number => sentence.trim().split(/\s+/).length;

describe("the bundled protocols", () => {
  it("are three, found by their ids", () => {
    expect(bundledProtocols.map((p) => p.id)).toEqual(["cartridgeMachine", "autoclavedTubes", "conventionBooth"]);
    expect(protocolById("autoclavedTubes")?.products[0]?.label.contactSec).toBe(180);
    expect(protocolById("nobodysProtocol")).toBeUndefined();
  });

  it("wait differently long, since the time is the label's and no constant", () => {
    // Contact time is per product: label directions govern (FIFRA, from memory); the figures are invented labels.
    const waits = bundledProtocols.map(
      (p) => p.products.find((s) => s.use === "surfaceDisinfectant")?.label.contactSec,
    );
    expect(waits).toEqual([300, 180, 60]);
  });
});

describe.each(protocols)("$id", ({ protocol: p }) => {
  const steps = everyStep(p).map((s) => s.step);
  const lists = [p.setUp, p.dressing, p.breakdown, p.resuming];

  it("reads back unchanged through the schema, with unique ids and known items", () => {
    expect(asProtocol(JSON.parse(JSON.stringify(p)))).toEqual({ ok: true, protocol: p });
  });

  it("is a real session's worth: 45 to 70 steps beside its event flows, 20 to 40 items", () => {
    const count = lists.flat().length;
    expect(count).toBeGreaterThanOrEqual(45);
    expect(count).toBeLessThanOrEqual(70);
    expect(p.items.length).toBeGreaterThanOrEqual(20);
    expect(p.items.length).toBeLessThanOrEqual(40);
  });

  it("has a flow of one to six steps for everything that can happen", () => {
    expect(p.events.map((f) => f.event)).toEqual(eventIds);
    expect(p.events.filter((f) => f.steps.length < 1 || f.steps.length > 6)).toEqual([]);
    expect(p.events.filter((f) => f.onwards === "dressing").map((f) => f.event)).toEqual(["stopEarly"]);
  });

  it("says at most fourteen words and shows two to six, in both languages", () => {
    const long = steps.filter((s) => wordsIn(s.say.en) > 14 || wordsIn(s.say.es ?? "") > 14);
    const shown = steps.flatMap((s) => [s.show.en, s.show.es ?? ""]).filter((t) => wordsIn(t) < 2 || wordsIn(t) > 6);
    const texts = [...steps.flatMap((s) => [s.say, s.show, ...(s.caution ? [s.caution] : [])]), p.name, p.about];
    const called = p.items.flatMap((i) => [i.name, i.calledAs]);
    expect(long.map((s) => s.id)).toEqual([]);
    expect(shown).toEqual([]);
    expect([...texts, ...called].filter((t) => !t.es)).toEqual([]);
  });

  it("calls no two items by the same word", () => {
    const words = p.items.flatMap((i) => [`en ${i.calledAs.en}`, `es ${i.calledAs.es}`]);
    expect(words.filter((w, i) => words.indexOf(w) !== i)).toEqual([]);
  });

  it("lets nobody leave out hands, gloves, sharps, wetness or a sterile pack", () => {
    // WHO 2009; 29 CFR 1910.1030 (d)(2)(v), (d)(3), (d)(4)(iii)(A); CDC 2008.
    const guarded = steps.filter(
      (s) =>
        s.kind === "count" ||
        does(s, "wash", "rub", "don", "doff", "apply", "wipe", "preClean", "breakSkin") ||
        s.effects.some((e) => e.verb === "discard" && e.into === "sharps") ||
        does(s, "open"),
    );
    expect(guarded.length).toBeGreaterThan(40);
    expect(guarded.filter((s) => s.skippable || s.kind === "check").map((s) => s.id)).toEqual([]);
  });

  it("keeps hands, gloves, sharps and wetness steps of their own, and checks without effects", () => {
    // Design rule of the companion, no outside source: what guards health stands alone.
    const handsOnly = steps.filter((s) => does(s, "wash", "rub", "don", "doff"));
    expect(handsOnly.filter((s) => s.effects.length !== 1).map((s) => s.id)).toEqual([]);
    expect(steps.filter((s) => does(s, "apply") && does(s, "wipe")).map((s) => s.id)).toEqual([]);
    expect(steps.filter((s) => s.kind === "check" && s.effects.length > 0).map((s) => s.id)).toEqual([]);
  });
});
