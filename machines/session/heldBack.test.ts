/** What is unsafe just now is read out with the reason against it; what is done all the same is kept as what it is. */
import { describe, expect, it } from "vitest";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import type { SessionEvent } from "./vocabulary";

const done: SessionEvent = { type: "step.done" };
const times = (n: number): SessionEvent[] => Array.from({ length: n }, () => done);
const refusals = (run: Run) => run.facts.flatMap((f) => (f.type === "v1.Refused" ? [[f.reason, f.item]] : []));
const [washHands, checkLight, checkFloor, coverBoth, putGlovesOn, openNeedle, bottleAway] = smallProtocol.setUp;

describe("a step that would be unsafe", () => {
  it("is held back where a surface to be covered is soiled", () => {
    const dropped: SessionEvent = { type: "event.reported", event: "dropped", item: "lamp" };
    const run = told(begun(inputFor(smallProtocol)), dropped, ...times(3));
    // The hands that met the soiled lamp would meet the chair next.
    expect(refusals(run)).toEqual([
      ["cleanFirst", "lamp"],
      ["handsNotWashed", "chair"],
    ]);
  });

  it("is held back where a surface to be covered is still wet", () => {
    const wet = { ...(checkLight as object), effects: [{ verb: "apply", item: "lamp", product: "spray" }] };
    const setUp = [washHands, wet, coverBoth, checkFloor, putGlovesOn, openNeedle, bottleAway];
    const run = told(begun(inputFor({ ...smallProtocol, setUp } as typeof smallProtocol)), ...times(2));
    expect(refusals(run)).toEqual([["cleanFirst", "lamp"]]);
    expect(told(run, done).state.context.world.deviations).toContainEqual({
      code: "coveredUnclean",
      item: "lamp",
      step: "coverBoth",
    });
  });

  it("is held back where a pack would be opened with bare hands that were not washed", () => {
    const setUp = [openNeedle, washHands, checkLight, checkFloor, coverBoth, putGlovesOn, bottleAway];
    const run = begun(inputFor({ ...smallProtocol, setUp } as typeof smallProtocol));
    expect(refusals(run)).toEqual([["handsNotWashed", "needle"]]);
  });

  it("is told once for each reason, and not again where it was done before", () => {
    const covered = told(begun(inputFor(smallProtocol)), ...times(4), { type: "step.back" });
    expect(refusals(covered)).toEqual([]);
  });
});

describe("back to the skin", () => {
  const goOn = {
    ...checkLight,
    id: "goOn",
    kind: "do",
    atWork: true,
    effects: [{ verb: "breakSkin", item: "needle" }],
  };
  const events = smallProtocol.events.map((f) => (f.event === "freshGloves" ? { ...f, steps: [...f.steps, goOn] } : f));
  const protocol = { ...smallProtocol, events } as typeof smallProtocol;
  const fresh: SessionEvent = { type: "event.reported", event: "freshGloves" };

  it("is the end of a flow that came on the work", () => {
    const run = told(begun(inputFor(protocol)), ...times(7), fresh, ...times(4));
    expect(run.state.context.world.station.hands).toBe("glovedSoiled");
  });

  it("is no part of a flow told in the middle of a list", () => {
    const run = told(begun(inputFor(protocol)), ...times(5), fresh, ...times(3));
    expect(run.facts.at(-1)).toMatchObject({ type: "v1.StepEntered", step: "openNeedle" });
    expect(run.state.context.world.station.hands).toBe("glovedClean");
  });

  it("is no part of a flow told in the middle of another", () => {
    const run = told(begun(inputFor(protocol)), ...times(7));
    const inside = told(run, { type: "event.reported", event: "newNeedle" }, done, fresh, ...times(3));
    expect(inside.facts.at(-1)).toMatchObject({ type: "v1.StepEntered", step: "newNeedleOpen" });
  });
});

describe("a wet clock", () => {
  const wetting = { ...checkLight, effects: [{ verb: "apply", item: "lamp", product: "spray" }] };
  const setUp = [wetting, checkFloor, washHands, putGlovesOn, openNeedle, bottleAway];
  const wet = () => told(begun(inputFor({ ...smallProtocol, setUp } as typeof smallProtocol)), done);

  it("is worth nothing once its surface fell to the floor", () => {
    const run = told(wet(), { type: "event.reported", event: "dropped", item: "lamp" });
    expect(run.state.context.world.clocks.lamp?.state).toBe("dry");
  });
});
