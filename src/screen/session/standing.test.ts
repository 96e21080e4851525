import { describe, expect, it } from "vitest";
import { begun, inputFor, told } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { commandIds } from "../../intent/phrases";
import { commandGroups } from "./commandGroups";
import { standingOf } from "./standing";

const start = (brisk = false) => begun(inputFor(smallProtocol, { brisk }));
const done = { type: "step.done" } as const;
const toWork = () => told(start(), done, done, done, done, done, done, done);
const toCount = () => told(toWork(), { type: "procedure.finish" }, done, done);

describe("what the screen shows of a session", () => {
  it("shows the first step, the next one and the place in the list", () => {
    expect(standingOf(start().state)).toMatchObject({
      now: { kind: "steps", at: 1, steps: [{ id: "washHands" }], next: { id: "checkLight" } },
      count: 7,
      behind: 0,
      question: null,
    });
  });

  it("shows harmless checks together in the brisk mode", () => {
    const { now } = standingOf(told(start(true), done).state);
    expect(now).toMatchObject({ steps: [{ id: "checkLight" }, { id: "checkFloor" }], next: { id: "coverBoth" } });
  });

  it("shows no step while at work", () => {
    expect(standingOf(toWork().state)).toMatchObject({ now: { kind: "atWork" }, count: 0 });
  });

  it("asks which item was touched, and offers all of them", () => {
    const asked = told(toWork(), { type: "event.reported", event: "touched" });
    expect(standingOf(asked.state).question).toEqual({
      kind: "item",
      about: "touched",
      candidates: ["lamp", "chair"],
      at: 0,
    });
  });

  it("asks for the sharps at their count", () => {
    expect(standingOf(toCount().state).question).toEqual({ kind: "sharps", expected: 1 });
  });

  it("asks why when the count differs twice", () => {
    const no = { type: "answer.no" } as const;
    expect(standingOf(told(toCount(), no, no).state).question).toEqual({ kind: "discrepancy", offered: "lost" });
  });

  it("puts first aid before everything", () => {
    const hurt = told(toCount(), { type: "exposure.reported" });
    expect(standingOf(hurt.state)).toMatchObject({ now: { kind: "firstAid" }, question: { kind: "firstAid" } });
  });

  it("asks about every surface that nobody watched", () => {
    const sprayed = told(toCount(), { type: "answer.confirm" }, done, done, done, done, {
      type: "time.gap",
      why: "sleep",
    });
    expect(standingOf(sprayed.state).question).toEqual({ kind: "wetness", surfaces: ["chair"] });
  });
});

describe("the groups of commands", () => {
  it("hold every command once", () => {
    expect(Object.values(commandGroups).flat().sort()).toEqual([...commandIds].sort());
  });
});
