/** Going on after an accident, by where it happened: nothing leads back to the skin while the station comes apart. */
import { describe, expect, it } from "vitest";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { walk } from "../../tests/support/walk";
import { cartridgeMachine } from "./protocols/cartridge";
import { resumingSteps } from "./resumingSteps";
import { stepHere } from "./world";

const ids = (list: "setUp" | "dressing" | "breakdown" | null, gloved: boolean, sharpsOut: boolean): string[] =>
  resumingSteps(cartridgeMachine, { list, gloved, sharpsOut }).map((s) => s.id);
const change = ["resumingGlovesOff", "resumingGlovesHands", "resumingGlovesOn"];
const again = ["resumingFreshOff", "resumingFreshHands", "resumingFreshOn"];

describe("going on after an accident", () => {
  it("at work is the whole list", () => {
    expect(ids(null, true, true)).toEqual(cartridgeMachine.resuming.map((s) => s.id));
  });

  it("in the breakdown opens no needle and covers nothing", () => {
    expect(ids("breakdown", true, true)).toEqual([...change, "resumingSharps", ...again, "resumingTold"]);
    expect(ids("breakdown", true, false)).toEqual([...change, "resumingTold"]);
  });

  it("in the set-up replaces the needle that was open, and only then", () => {
    const replaced = [...change, "resumingSharps", ...again, "resumingNeedle", "resumingTold"];
    expect(ids("setUp", true, true)).toEqual(replaced);
    expect(ids("setUp", true, false)).toEqual([...change, "resumingTold"]);
  });

  it("with bare hands washes them and puts no gloves on", () => {
    expect(ids("breakdown", false, false)).toEqual(["resumingGlovesOff", "resumingGlovesHands", "resumingTold"]);
  });

  it("with bare hands and a sharp out puts gloves on for the sharp, and ends with hands washed and bare", () => {
    expect(ids("dressing", false, true)).toEqual([
      ...change,
      "resumingSharps",
      "resumingFreshOff",
      "resumingFreshHands",
      "resumingTold",
    ]);
    expect(resumingSteps(cartridgeMachine, { list: "dressing", gloved: false, sharpsOut: true }, true)).toHaveLength(8);
  });

  it("goes on in the middle of a change of gloves, where the hands were bare, without asking to wash gloves", () => {
    const here = (run: Run) => stepHere(run.state.context.input, run.state.context.world)?.id;
    const done: SessionEvent = { type: "step.done" };
    let run = walk(begun(inputFor(cartridgeMachine)), (r) => r.state.context.world.phase === "procedure");
    run = told(run, { type: "procedure.finish" }, done);
    expect(run.state.context.world.station.hands).toBe("bare");
    expect(run.state.context.world.sharps.binned).toBeLessThan(run.state.context.world.sharps.opened);
    const before = here(run);
    run = walk(told(run, { type: "exposure.reported" }, { type: "session.resume" }), (r) => here(r) === before);
    const entered = run.facts.filter((f) => f.cause === run.facts.at(-1)?.cause);
    expect(entered.filter((f) => f.type === "v1.Refused")).toEqual([]);
    expect(run.state.context.world.station.hands).toBe("washed");
  });

  it("leaves a balanced count as it is where no sharp was out", () => {
    const here = (run: Run) => stepHere(run.state.context.input, run.state.context.world)?.id;
    const done: SessionEvent = { type: "step.done" };
    let run = walk(begun(inputFor(cartridgeMachine)), (r) => r.state.context.world.phase === "procedure");
    run = walk(told(run, { type: "procedure.finish" }), (r) => here(r) === "uncoverAll");
    const { counted, opened } = run.state.context.world.sharps;
    expect([counted, opened > 0]).toEqual(["balanced", true]);
    run = told(run, { type: "exposure.reported" }, { type: "session.resume" });
    expect(here(run)).toBe("resumingGlovesOff");
    run = told(run, done, done, done, done);
    expect(here(run)).toBe("uncoverAll");
    expect(run.state.context.world.sharps.counted).toBe("balanced");
  });
});
