import { describe, expect, it } from "vitest";
import type { Task, TurnaroundProblem } from "./problem";
import { solve } from "./solve";

const task = (id: string, handsOnSec: number, more: Partial<Task> = {}): Task => ({
  id,
  handsOnSec,
  cleanliness: "either",
  after: [],
  ...more,
});
const later = (id: string, minWaitSec = 0, maxWaitSec?: number) => ({
  task: id,
  minWaitSec,
  ...(maxWaitSec === undefined ? {} : { maxWaitSec }),
});
const ask = (tasks: readonly Task[], more: Partial<TurnaroundProblem> = {}) =>
  solve({ tasks, gloveChangeSec: 60, gloves: "soiled", ...more });

describe("an impossible turnaround is refused in plain words", () => {
  it("when the order goes round in a circle, naming the circle", () => {
    const tasks = [
      task("a", 1, { after: [later("c")] }),
      task("b", 1, { after: [later("a")] }),
      task("c", 1, { after: [later("b")] }),
    ];
    expect(ask(tasks)).toEqual({
      kind: "impossible",
      code: "cycle",
      words: 'The order goes round in a circle: "a" waits for "c" waits for "b" waits for "a".',
    });
  });

  it("when a surface dries faster than it can be wetted", () => {
    const wet = { contactSec: 600, reapplyWithinSec: 30, reapplySec: 45 };
    expect(ask([task("wet", 20, { label: "Wet the chair", wet })])).toEqual({
      kind: "impossible",
      code: "rewet-window-too-short",
      words:
        '"Wet the chair" has to be wetted again within 30 s, but wetting it takes 45 s: the first part is dry before the last part is wet.',
    });
  });

  it("when a window closes before its wait is over", () => {
    expect(ask([task("a", 1), task("b", 1, { after: [later("a", 100, 60)] })])).toMatchObject({
      code: "window-shorter-than-wait",
    });
  });

  it("when the work that must lie between does not fit the window", () => {
    const tasks = [
      task("a", 1),
      task("b", 50, { after: [later("a", 30)] }),
      task("c", 1, { after: [later("b"), later("a", 0, 60)] }),
    ];
    expect(ask(tasks)).toMatchObject({
      code: "window-shorter-than-work",
      words: expect.stringContaining("takes 80 s"),
    });
  });

  it("when no order at all fits two windows", () => {
    const tasks = [
      task("a", 10),
      task("b", 10),
      task("c", 10, { after: [later("a", 0, 5)] }),
      task("d", 10, { after: [later("b", 0, 5), later("a", 0, 5)] }),
    ];
    expect(ask(tasks)).toMatchObject({ kind: "impossible", code: "no-order-fits" });
  });

  it("when a name is unknown, or given twice", () => {
    expect(ask([task("a", 1, { after: [later("x")] })])).toMatchObject({ code: "unknown-task" });
    expect(ask([task("a", 1), task("a", 1)])).toMatchObject({ code: "duplicate-task" });
  });

  it("when times are not whole seconds", () => {
    expect(ask([task("a", 1.5)])).toMatchObject({ code: "bad-number" });
    expect(ask([task("a", Number.NaN)])).toMatchObject({ code: "bad-number" });
  });

  it("when a window has closed already, or nobody knows whether it has", () => {
    const tasks = [task("a", 1), task("b", 1, { after: [later("a", 0, 60)] })];
    expect(ask(tasks, { soFar: { done: [{ task: "a", agoSec: 61 }] } })).toMatchObject({ code: "already-too-late" });
    expect(ask(tasks, { soFar: { done: [{ task: "a" }] } })).toMatchObject({ code: "window-unknown" });
  });

  it("when a surface will be dry before it can be wetted again", () => {
    const wet = { contactSec: 600, reapplyWithinSec: 120, reapplySec: 30 };
    const answer = ask([task("wet", 20, { wet })], { soFar: { done: [{ task: "wet", agoSec: 100 }] } });
    expect(answer).toMatchObject({
      code: "already-too-late",
      words: expect.stringContaining("apply it again from the start"),
    });
  });

  it("when there are more tasks than can be planned exactly", () => {
    expect(ask(Array.from({ length: 53 }, (_, at) => task(`${at}`, 1)))).toMatchObject({ code: "too-many-tasks" });
  });
});
