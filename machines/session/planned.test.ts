import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { stepHere } from "../../src/session/world";
import { isAllowedOrder } from "../../src/turnaround/breakdown/orders";
import { anyPicks, orderBy } from "../../src/turnaround/checks/anyOrder";
import { bothWet, toTheEnd } from "../../tests/support/anyEvents";
import { begun, inputFor, told, types } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import type { SessionEvent } from "./vocabulary";

const input = inputFor(smallProtocol);
const written = smallProtocol.breakdown.map((s) => s.id);
const swapped = (a: string, b: string) => written.map((id) => (id === a ? b : id === b ? a : id));
const lampFirst: SessionEvent = { type: "plan.chosen", order: swapped("wetChair", "wetLamp") };
const atBreakdown = told(begun(input), ...bothWet.slice(0, 9));
const here = ({ state }: typeof atBreakdown) => stepHere(input, state.context.world)?.id;
const done: SessionEvent = { type: "step.done" };

describe("a planned order", () => {
  it("is stated, and the breakdown is walked in it", () => {
    const after = told(atBreakdown, lampFirst, done, { type: "answer.confirm" }, done, done, done);
    expect(types(after.facts)).toContain("PlanChosen");
    expect(here(after)).toBe("wetLamp");
    expect(here(told(after, done))).toBe("wetChair");
  });

  it("that puts another step here reads that step out", () => {
    const atWet = told(atBreakdown, done, { type: "answer.confirm" }, done, done, done);
    expect(here(atWet)).toBe("wetChair");
    const after = told(atWet, lampFirst);
    expect(after.facts.slice(-2)).toMatchObject([
      { type: "v1.PlanChosen" },
      { type: "v1.StepEntered", step: "wetLamp" },
    ]);
  });

  it("is not taken where it would move what lies behind, wipe before wetting, or put off the sharps", () => {
    const wetLampDone = told(atBreakdown, done, { type: "answer.confirm" }, done, done, done, done);
    expect(told(wetLampDone, lampFirst).facts).toEqual(wetLampDone.facts);
    for (const order of [swapped("wetLamp", "wipeLamp"), swapped("needleAway", "cupAway"), written.toReversed()]) {
      expect(told(atBreakdown, { type: "plan.chosen", order }).facts).toEqual(atBreakdown.facts);
    }
  });

  it("is not taken in the middle of a flow, in first aid, or before the breakdown", () => {
    for (const event of [{ type: "event.reported", event: "freshGloves" }, { type: "exposure.reported" }] as const) {
      const amid = told(atBreakdown, event);
      expect(told(amid, lampFirst).facts).toEqual(amid.facts);
    }
    expect(told(begun(input), lampFirst).facts).toEqual(begun(input).facts);
  });

  property.prop([fc.array(fc.tuple(fc.nat({ max: 22 }), anyPicks), { maxLength: 6 })])(
    "may change at any time, and every step is still asked for once, in an allowed order",
    (plans) => {
      let run = begun(input);
      for (const [i, event] of toTheEnd.entries()) {
        for (const [, picks] of plans.filter(([at]) => at === i % 23)) {
          const behind = run.state.context.world.done.filter((id) => written.includes(id));
          run = told(run, { type: "plan.chosen", order: orderBy(smallProtocol, picks, behind) });
        }
        run = told(run, event);
      }
      const walked = run.facts.flatMap((f) => (f.type === "v1.StepDone" && written.includes(f.step) ? [f.step] : []));
      const rest = written.filter((id) => !walked.includes(id));
      expect(new Set(walked).size).toBe(walked.length);
      expect(walked.length).toBeGreaterThan(6);
      const left = orderBy(smallProtocol, [0], walked);
      expect(isAllowedOrder(smallProtocol, left)).toBe(true);
      expect(left.length).toBe(walked.length + rest.length);
    },
  );
});
