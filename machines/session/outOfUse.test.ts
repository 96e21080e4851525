/** A reusable thing is taken out of use: it is left alone until it is taken back, and then it counts as soiled. */
import { describe, expect, it } from "vitest";
import { announce } from "../../src/announcements/announce";
import { en } from "../../src/announcements/en";
import { es } from "../../src/announcements/es";
import type { Phrasebook } from "../../src/announcements/phrasebook";
import { textOf } from "../../src/announcements/utterance";
import { replay } from "../../src/export";
import { live } from "../../src/export/samples/lived";
import { newSigner } from "../../src/log";
import { currentRules } from "../../src/session/rules";
import { stepHere, stepsHere } from "../../src/session/world";
import { begun, inputFor, passing, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { decide } from "./decide";
import { listenedFor } from "./listenedFor";
import { mayTouch } from "./mayTouch";
import type { SessionEvent } from "./vocabulary";

const done: SessionEvent = { type: "step.done" };
const confirm: SessionEvent = { type: "answer.confirm" };
const times = (n: number): SessionEvent[] => Array.from({ length: n }, () => done);
const out = (item?: string): SessionEvent =>
  item === undefined ? { type: "item.outOfUse" } : { type: "item.outOfUse", item };
const back = (item: string): SessionEvent => ({ type: "item.backInUse", item });
const input = inputFor(smallProtocol);
const start = (): Run => begun(input);
const toBreakdown: SessionEvent[] = [...times(7), { type: "procedure.finish" }, done, done, confirm];
const atBreakdown = (): Run => told(start(), ...toBreakdown);

function said(run: Run, event: SessionEvent, book: Phrasebook = en): string[] {
  const { next, facts } = decide(run.state, event);
  const moment = { kept: true, event, way: { by: "touch" }, before: run.state, after: next, facts } as const;
  return announce(book, moment).map(textOf);
}
const typesOf = (before: Run, after: Run) => after.facts.slice(before.facts.length).map((f) => f.type);
const lampOf = ({ state }: Run) => state.context.world.station.items.lamp;

describe("a thing taken out of use", () => {
  it("is kept as a fact, said, and may not be touched", () => {
    const run = told(start(), done, out("lamp"));
    expect(run.facts).toContainEqual(expect.objectContaining({ type: "v1.ItemOutOfUse", item: "lamp" }));
    expect(said(told(start(), done), out("lamp"))[0]).toBe("Lamp: out of use. Leave it alone.");
    expect(said(told(start(), done), out("lamp"), es)[0]).toMatch(/fuera de uso/);
    expect(mayTouch(run.state.context, "lamp")).toEqual({ may: false, reason: "outOfUse" });
  });

  it("is asked for by name where none was given, one thing at a time", () => {
    const asked = told(atBreakdown(), done, out());
    expect(stepHere(input, asked.state.context.world)?.id).toBe("uncoverBoth");
    expect(asked.state.context.naming).toMatchObject({ about: "outOfUse", candidates: ["lamp", "chair"] });
    const named = told(asked, { type: "answer.no" }, { type: "answer.yes" });
    expect(named.facts.filter((f) => f.type === "v1.ItemOutOfUse").map((f) => f.item)).toEqual(["chair"]);
    expect(named.state.matches({ conversation: "open" })).toBe(true);
    const touched = told(asked, out("chair"));
    expect(touched.facts.filter((f) => f.type === "v1.ItemOutOfUse").map((f) => f.item)).toEqual(["chair"]);
  });

  it("is none that is thrown away anyway, nor a sharp", () => {
    for (const item of ["cup", "needle", "nothing"]) {
      const run = told(start(), out(item));
      expect(run.facts.at(-1)).toMatchObject({ type: "v1.Refused", request: "item.outOfUse", reason: "notNow" });
    }
  });

  it("is refused for use where a step asks for it; done all the same, that is a deviation", () => {
    const before = told(start(), done, done, out("lamp"));
    const entered = told(before, done);
    expect(entered.facts).toContainEqual(
      expect.objectContaining({ type: "v1.Refused", request: "cover", reason: "outOfUse", item: "lamp" }),
    );
    const used = told(entered, done);
    expect(used.facts).toContainEqual(
      expect.objectContaining({ type: "v1.Deviation", code: "usedTaggedOut", item: "lamp", step: "coverBoth" }),
    );
    expect(lampOf(used)?.at).toBe("taggedOut");
  });

  it("is passed over by cleaning, wetting and wiping: no clock begins, none keeps the station waiting", () => {
    const wet = told(atBreakdown(), out("lamp"), ...times(5));
    expect(Object.keys(wet.state.context.world.clocks)).toEqual(["chair"]);
    const ready = told(passing(told(passing(wet, 110), { type: "surface.applied" }), 70), { type: "answer.yes" });
    const wiped = told(ready, ...times(5));
    expect(stepHere(input, wiped.state.context.world)?.id).toBe("lastGlovesOff");
    expect(wiped.facts.filter((f) => f.type === "v1.Deviation" && f.item === "lamp")).toEqual([]);
    const closed = told(wiped, done, done, { type: "session.close" }, confirm);
    expect(closed.facts.at(-1)).toMatchObject({ type: "v1.SessionClosed", unready: ["lamp"] });
  });

  it("under a clock ends it: nobody waits for what is out of use", () => {
    const wet = told(start(), { type: "surface.applied", surface: "lamp" });
    expect(Object.keys(wet.state.context.world.clocks)).toEqual(["lamp"]);
    const run = told(wet, out("lamp"));
    expect(run.state.context.world.clocks).toEqual({});
    expect(told(run, { type: "surface.applied", surface: "lamp" }).facts.at(-1)).toMatchObject({ reason: "outOfUse" });
  });

  it("is named in what is left, apart from what is not ready yet", () => {
    const run = told(atBreakdown(), out("lamp"));
    const [words] = said(run, { type: "ask.whatLeft" });
    expect(words).toContain("Out of use: lamp.");
    expect(words).not.toMatch(/Not ready yet:[^.]*lamp/);
    expect(said(run, { type: "ask.whatLeft" }, es)[0]).toContain("Fuera de uso: lamp.");
  });

  it("comes back as soiled, and the breakdown makes it ready, or has steps added that do", () => {
    const again = told(atBreakdown(), out("lamp"), back("lamp"));
    expect(lampOf(again)).toMatchObject({ at: "station", condition: "soiled" });
    expect(said(told(atBreakdown(), out("lamp")), back("lamp"))[0]).toBe("Lamp: soiled. Leave it until it is cleaned.");
    const gloved = told(start(), ...times(5), out("lamp"), back("lamp"));
    expect(mayTouch(gloved.state.context, "lamp")).toEqual({ may: false, reason: "itemSoiled" });
    // The protocol's own list says nothing of the bottle.
    const bottle = told(atBreakdown(), out("bottle"), back("bottle"));
    expect(stepsHere(input, bottle.state.context.world).map((s) => s.id)).toContain("addedWet");
  });

  it("comes back only where it was out", () => {
    expect(told(start(), back("lamp")).facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "notNow" });
  });

  it("is read back before it is undone: that would make the station look safer", () => {
    const undone = told(start(), done, out("lamp"), { type: "report.undo" });
    expect(undone.state.matches({ conversation: { readBack: "undo" } })).toBe(true);
    expect(lampOf(undone)?.at).toBe("taggedOut");
    expect(lampOf(told(undone, confirm))?.at).toBe("station");
  });

  it("leaves the count of the sharps open where it stood", () => {
    const counting = told(start(), ...times(7), { type: "procedure.finish" }, done, done, out("lamp"));
    expect(counting.state.matches({ conversation: { readBack: "sharps" } })).toBe(true);
  });
});

describe("a problem with a step that makes things ready", () => {
  const cleaning = (): Run => told(atBreakdown(), done, done);
  const problem: SessionEvent = { type: "step.problem" };

  it("asks whether something has to go out of use, and a yes names what", () => {
    expect(said(cleaning(), problem)).toContain("Take something out of use?");
    expect(said(cleaning(), problem, es)).toContain("¿Retirar algo del uso?");
    const run = told(cleaning(), problem);
    expect([...listenedFor(run.state)]).toEqual(expect.arrayContaining(["yes", "no", "done"]));
    const named = told(run, { type: "answer.yes" });
    expect(named.state.context.naming).toMatchObject({ about: "outOfUse", candidates: ["chair", "lamp"] });
    const gone = told(named, { type: "answer.yes" });
    expect(typesOf(named, gone)).toEqual(expect.arrayContaining(["v1.ItemOutOfUse"]));
  });

  it("lets the work go on without an answer, and a no changes nothing", () => {
    const run = told(cleaning(), problem);
    expect(typesOf(run, told(run, done))).toContain("v1.StepDone");
    expect(typesOf(run, told(run, { type: "answer.no" }))).toEqual([]);
    const later = told(run, done, { type: "answer.yes" });
    expect(later.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "notNow" });
  });

  it("answers a no aloud, with what is to be done here", () => {
    expect(said(told(cleaning(), problem), { type: "answer.no" })).toEqual(["Do cleanBoth"]);
    const atWipe = told(cleaning(), ...times(6), problem);
    expect(said(atWipe, { type: "answer.no" })).toEqual(["Chair: three minutes."]);
  });

  it("is not asked where the step makes nothing ready", () => {
    expect(said(start(), problem)).not.toContain("Take something out of use?");
    expect(told(start(), problem, { type: "answer.yes" }).facts.at(-1)).toMatchObject({ reason: "notNow" });
  });

  it("is not asked while a wet surface waits for a yes: one yes answers one question", () => {
    const wet = told(cleaning(), done, done);
    const full = passing(told(passing(wet, 110), { type: "surface.applied", surface: "chair" }), 75);
    expect(full.state.context.world.clocks.chair?.state).toBe("timeUp");
    expect(told(full, problem).state.context.offered).toBeNull();
  });
});

describe("the record of it", () => {
  it("follows, names at its front what is out of use, and finds a forged one", async () => {
    const signer = await newSigner();
    const { kept } = await live(input, [...toBreakdown, out("lamp"), ...times(3), out("chair"), back("chair")], signer);
    const read = replay(currentRules, input, kept.entries);
    expect(read).toMatchObject({ ok: true, summary: { outOfUse: ["lamp"] } });
    const forged = kept.entries.map((e) =>
      e.fact.type === "v1.ItemOutOfUse" ? { ...e, fact: { ...e.fact, item: "cup" } } : e,
    );
    expect(replay(currentRules, input, forged)).toMatchObject({ ok: false, code: "event-facts-differ" });
    const never = kept.entries.filter((e) => e.fact.type !== "v1.ItemOutOfUse");
    expect(replay(currentRules, input, never)).toMatchObject({ ok: false });
  });
});
