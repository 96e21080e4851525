import { describe, expect, it } from "vitest";
import { stepHere } from "../../src/session/world";
import { begun, inputFor, passing, type Run, told, types } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { resume, standing } from "./decide";

const input = inputFor(smallProtocol);
const here = (run: Run) => stepHere(run.state.context.input, run.state.context.world)?.id ?? null;
const world = (run: Run) => run.state.context.world;
const done = { type: "step.done" } as const;
const confirm = { type: "answer.confirm" } as const;
const yes = { type: "answer.yes" } as const;
const no = { type: "answer.no" } as const;
const times = (n: number) => Array.from({ length: n }, () => done);

const atWork = (): Run => told(begun(input), ...times(7));
const atBreakdown = (): Run => told(atWork(), { type: "procedure.finish" }, done);
/** Both surfaces are wet, fresh gloves are on, and the chair is to be wiped. */
const bothWet = (): Run => told(atBreakdown(), done, confirm, ...times(3), ...times(2), ...times(3));

describe("a session", () => {
  it("walks the set-up and begins the work when its last step is done", () => {
    const run = atWork();
    expect(world(run).phase).toBe("procedure");
    expect(run.state.value).toMatchObject({ phase: { procedure: "atWork" }, conversation: "open" });
  });

  it("reads earlier steps again on back, and undoes nothing", () => {
    const run = told(begun(input), done, done, { type: "step.back" });
    expect(here(run)).toBe("checkLight");
    expect(world(run).done).toEqual(["washHands", "checkLight"]);
    expect(here(told(run, done))).toBe("checkFloor");
  });

  it("counts a needle once even when its step is read and answered again", () => {
    const run = told(begun(input), ...times(6), { type: "step.back" }, done);
    expect(world(run).sharps.opened).toBe(1);
  });

  it("asks for a reason before a step is left out, and keeps it", () => {
    const run = told(begun(input), done, { type: "step.skip" }, { type: "reason.given", reason: "noStock" });
    expect(world(run).skipped).toEqual([{ step: "checkLight", reason: "noStock" }]);
    expect(here(run)).toBe("checkFloor");
  });

  it("lets nobody leave out a step that guards health, and says so", () => {
    const run = told(begun(input), { type: "step.skip" });
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "notSkippable" });
    expect(here(run)).toBe("washHands");
  });

  it("walks the flow of an event and comes back to the work", () => {
    const run = told(atWork(), { type: "event.reported", event: "newNeedle" });
    expect(here(run)).toBe("oldNeedleOut");
    const after = told(run, done, done);
    expect(here(after)).toBeNull();
    expect(world(after).sharps).toMatchObject({ opened: 2, binned: 1 });
  });

  it("lays one flow on another and takes up the first again", () => {
    const run = told(atWork(), { type: "event.reported", event: "newNeedle" }, done, {
      type: "event.reported",
      event: "freshGloves",
    });
    expect(here(run)).toBe("freshOff");
    expect(here(told(run, ...times(3)))).toBe("newNeedleOpen");
  });

  it("names the items when a touch is reported without one, and keeps the one that is meant", () => {
    const run = told(atWork(), { type: "event.reported", event: "touched" }, no, yes);
    expect(run.facts.findLast((f) => f.type === "v1.EventReported")).toMatchObject({ event: "touched", item: "chair" });
  });

  it("keeps a touch that nobody can name", () => {
    const run = told(atWork(), { type: "event.reported", event: "touched" }, no, no);
    expect(run.facts.findLast((f) => f.type === "v1.EventReported")).toMatchObject({ event: "touched", item: null });
  });

  it("goes to the dressing when the client stops early", () => {
    const run = told(atWork(), { type: "event.reported", event: "stopEarly" }, done);
    expect(world(run).phase).toBe("dressing");
    expect(here(run)).toBe("coverWound");
  });

  it("makes a surface ready only when the time is full and its wetness attested", () => {
    const full = passing(passingWithSpray(bothWet()), 70);
    expect(world(full).clocks.chair?.state).toBe("timeUp");
    const asked = told(full, done);
    expect(asked.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "answerFirst" });
    const attested = told(
      asked,
      { type: "question.asked", about: "stayedWet", surfaces: ["chair", "lamp"] },
      yes,
      done,
    );
    expect(types(attested.facts)).toContain("SurfaceWiped");
    expect(here(attested)).toBe("wipeLamp");
  });

  it("lets a yes answer only what was asked aloud", () => {
    const full = passing(passingWithSpray(bothWet()), 70);
    const run = told(full, { type: "question.asked", about: "stayedWet", surfaces: ["lamp"] }, yes);
    expect(world(run).clocks.lamp?.state).toBe("ready");
    expect(world(run).clocks.chair?.state).toBe("timeUp");
  });

  it("keeps an early wipe, says how much was missing, and starts again from zero when it is wet again", () => {
    const early = told(passing(bothWet(), 100), done);
    expect(early.facts.findLast((f) => f.type === "v1.WipedEarly")).toMatchObject({
      surface: "chair",
      shortByMs: 80_000,
    });
    expect(here(early)).toBe("wipeChair");
    const again = told(early, { type: "surface.applied" });
    expect(world(again).clocks.chair).toMatchObject({ state: "counting", creditedMs: 0 });
  });

  it("asks for a spray before the label's limit, and starts again when it lapses", () => {
    const due = passing(bothWet(), 101);
    expect(types(due.facts)).toContain("ReapplyDue");
    const lapsed = passing(due, 25);
    expect(world(lapsed).clocks.chair).toMatchObject({ state: "dry", creditedMs: 0 });
  });

  it("asks which spray is meant when one was asked for and the step here is another", () => {
    const wetOne = told(atBreakdown(), done, confirm, ...times(3), done);
    const due = told(passing(wetOne, 95), { type: "question.asked", about: "reapply", surfaces: ["chair"] });
    expect(here(due)).toBe("wetLamp");
    const unclear = told(due, { type: "surface.applied" });
    expect(unclear.state.value).toMatchObject({ conversation: "naming" });
    expect(unclear.facts).toHaveLength(due.facts.length);
    const again = told(unclear, yes);
    expect(again.facts.slice(due.facts.length)[0]).toMatchObject({ type: "v1.WetClockReapplied", surface: "chair" });
    expect(here(again)).toBe("wetLamp");
    const step = told(unclear, no, yes);
    expect(types(step.facts.slice(due.facts.length))).toEqual(["StepDone", "WetClockStarted", "StepEntered"]);
    expect(world(step).clocks.chair?.reapplyAsked).toBe(true);
  });

  it("keeps a spray that was asked for although another question was asked since", () => {
    const due = told(
      passing(bothWet(), 95),
      { type: "question.asked", about: "reapply", surfaces: ["chair", "lamp"] },
      { type: "question.asked", about: "stayedWet", surfaces: ["lamp"] },
      { type: "surface.applied" },
    );
    expect(types(due.facts).filter((t) => t === "WetClockReapplied")).toHaveLength(2);
  });

  it("credits nothing for a gap and waits to hear that it is still wet", () => {
    const run = told(passing(bothWet(), 60), { type: "time.gap", why: "sleep" });
    const later = passing(run, 60);
    expect(world(later).clocks.chair).toMatchObject({ state: "doubtful", creditedMs: 60_000 });
    const trusted = told(later, { type: "question.asked", about: "stillWet", surfaces: ["chair"] }, yes);
    expect(world(trusted).clocks.chair).toMatchObject({ state: "counting", creditedMs: 60_000 });
    expect(world(trusted).clocks.lamp?.state).toBe("doubtful");
  });

  it("does not close while a wet clock runs, steps are left or the sharps are not settled", () => {
    const run = told(atBreakdown(), done, confirm, { type: "session.close" });
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "stepsLeft" });
  });

  it("asks for a recount and closes a lasting difference only as a discrepancy with its reason", () => {
    const run = told(atBreakdown(), done, no, no);
    expect(run.state.value).toMatchObject({ conversation: "naming" });
    const explained = told(run, yes);
    expect(world(explained).sharps).toMatchObject({ counted: "differs", discrepancy: "lost" });
    expect(here(explained)).toBe("cupAway");
  });

  it("closes when all is done, read back and confirmed, with nothing left unready", () => {
    const run = closed();
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.SessionClosed", balanced: true, unready: [] });
    expect(world(run).deviations).toEqual([]);
    expect(told(run, done).facts).toHaveLength(run.facts.length);
  });

  it("reaches first aid from anywhere, and resumes only through its list", () => {
    const run = told(atWork(), { type: "exposure.reported" });
    expect(here(run)).toBeNull();
    expect(told(run, done).facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "answerFirst" });
    const resumed = told(run, { type: "session.resume" }, ...times(6));
    expect(world(resumed)).toMatchObject({ exposure: "none", phase: "procedure", place: null });
    expect(world(resumed).sharps).toMatchObject({ opened: 2, binned: 1 });
  });

  it("ends after an exposure only on the read-back, and then takes the station down", () => {
    const run = told(atWork(), { type: "exposure.reported" }, { type: "event.reported", event: "stopEarly" });
    expect(world(run).exposure).toBe("firstAid");
    const ended = told(run, confirm);
    expect(world(ended)).toMatchObject({ exposure: "ended", phase: "breakdown" });
    expect(here(ended)).toBe("needleAway");
    const left = told(ended, { type: "session.close" }, confirm);
    expect(left.facts.at(-1)).toMatchObject({ type: "v1.SessionClosed", balanced: false });
    expect(world(left).sharps.discrepancy).toBe("exposure");
  });

  it("takes back the last report, and reads it back first where that would look safer", () => {
    const plain = told(begun(input), done, done, { type: "report.undo" });
    expect(here(plain)).toBe("checkLight");
    const safer = told(atWork(), { type: "event.reported", event: "touched", item: "lamp" }, { type: "report.undo" });
    expect(safer.state.value).toMatchObject({ conversation: { readBack: "undo" } });
    expect(told(safer, confirm).facts.at(-1)).toMatchObject({ type: "v1.Undone" });
  });

  it("refuses to ask for gloves over unwashed hands, and keeps it when they go on all the same", () => {
    const run = told(atWork(), { type: "event.reported", event: "freshGloves" }, done, { type: "step.back" });
    expect(world(run).station.hands).toBe("bare");
    const jumped = told(begun(inputFor(unwashed())), ...times(1));
    expect(jumped.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "handsNotWashed" });
    const kept = told(jumped, done);
    expect(world(kept).deviations.map((d) => d.code)).toEqual(["glovesOverUnwashedHands"]);
    expect(world(kept).station.hands).toBe("glovedSoiled");
  });

  it("refuses a needle past its date, usable through the end of that day", () => {
    const lot = (expiry: string) =>
      inputFor(smallProtocol, { lots: [{ item: "needle", lot: "L1", expiry, known: "typed" }] });
    const stale = told(begun(lot("2026-11-24")), ...times(5));
    expect(stale.facts.at(-1)).toMatchObject({ type: "v1.Refused", reason: "outOfDate", item: "needle" });
    const fresh = told(begun(lot("2026-11-25")), ...times(5));
    expect(fresh.facts.at(-1)).toMatchObject({ type: "v1.StepEntered", step: "openNeedle" });
  });

  it("starts no clock for a product past its date, whatever is reported", () => {
    const spray = smallProtocol.products.find(({ id }) => id === "spray") ?? expect.fail("the small protocol has it");
    const label = { ...spray.label, expiry: "2026-11-24" };
    const run = told(begun(inputFor(smallProtocol, { labels: { spray: label } })), {
      type: "surface.applied",
      surface: "chair",
    });
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.Deviation", code: "appliedOutOfDate", item: "chair" });
    expect(world(run).clocks).toEqual({});
  });

  it("reads harmless checks together when brisk, and hands always alone", () => {
    const run = told(begun(inputFor(smallProtocol, { brisk: true })), done);
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.StepEntered", step: "checkLight", group: 2 });
    expect(here(told(run, done))).toBe("coverBoth");
  });

  it("stands after a reload where its facts left it", () => {
    const run = bothWet();
    const again = resume(input, run.facts);
    expect(again.context.world).toEqual(world(run));
    expect(again.value).toEqual(run.state.value);
    expect(again.value).toEqual(standing(input, world(run)));
  });
});

const passingWithSpray = (run: Run): Run =>
  told(
    passing(run, 110),
    { type: "question.asked", about: "reapply", surfaces: ["chair", "lamp"] },
    { type: "surface.applied" },
  );

function closed(): Run {
  const full = passing(passingWithSpray(bothWet()), 70);
  const ready = told(full, { type: "question.asked", about: "stayedWet", surfaces: ["chair", "lamp"] }, yes);
  return told(ready, ...times(4), { type: "session.close" }, confirm);
}

function unwashed() {
  const [, , , , don, ...rest] = smallProtocol.setUp;
  const [, light] = smallProtocol.setUp;
  return { ...smallProtocol, setUp: [light, don, ...rest].filter((s) => s !== undefined) };
}
