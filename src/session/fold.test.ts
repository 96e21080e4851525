/** What single effects do to the world, where the whole walk would not tell. */
import { describe, expect, it } from "vitest";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { effectDone } from "./fold";
import type { EventFlow, Step } from "./protocol";
import { resumingSteps } from "./resumingSteps";
import type { World } from "./world";

const input = inputFor(smallProtocol);
const wetLamp = (): World => {
  const run = told(begun(input), { type: "surface.applied", surface: "lamp" });
  return told(run, { type: "time.witnessed", elapsedMs: 60_000 }).state.context.world;
};

describe("a surface under its clock", () => {
  it("that is cleaned once more starts at zero: the product is no longer on it", () => {
    expect(wetLamp().clocks.lamp).toMatchObject({ state: "counting", creditedMs: 60_000 });
    const cleaned = effectDone(input, wetLamp(), { verb: "preClean", item: "lamp" });
    expect(cleaned.clocks.lamp).toMatchObject({ state: "dry", creditedMs: 0 });
  });

  it("keeps its time where a cover should come off that is not there: nothing is met", () => {
    const soiled: World = { ...wetLamp(), station: { ...wetLamp().station, hands: "glovedSoiled" } };
    const same = effectDone(input, soiled, { verb: "uncover", item: "lamp" });
    expect(same.clocks.lamp).toMatchObject({ state: "counting", creditedMs: 60_000 });
    expect(same.station.items.lamp).toEqual(soiled.station.items.lamp);
  });
});

describe("by rules before 1.2.0, for records of that day", () => {
  const asThen = (world: World): World => ({ ...world, station: { ...world.station, asBefore12: true } });

  it("a wet surface that was cleaned once more kept its time", () => {
    const cleaned = effectDone(input, asThen(wetLamp()), { verb: "preClean", item: "lamp" });
    expect(cleaned.clocks.lamp).toMatchObject({ state: "counting", creditedMs: 60_000 });
  });

  it("soiled gloves met a thing whose cover should come off and was not there", () => {
    const soiled = { ...wetLamp(), station: { ...wetLamp().station, hands: "glovedSoiled" as const } };
    const met = effectDone(input, asThen(soiled), { verb: "uncover", item: "lamp" });
    expect(met.clocks.lamp).toMatchObject({ state: "dry" });
    expect(met.station.items.lamp?.condition).toBe("soiled");
  });
});

describe("an accident in the middle of a change of gloves", () => {
  const hurtBareIn = (run: Run) =>
    told(run, { type: "exposure.reported" }, { type: "session.resume" }).state.context.world;

  it("is resumed as if gloved: the change that it cuts short would have ended so", () => {
    const times = Array.from({ length: 5 }, () => ({ type: "step.done" }) as const);
    const gloved = told(begun(input), ...times);
    const bare = told(gloved, { type: "event.reported", event: "freshGloves" }, { type: "step.done" });
    expect([gloved, bare].map((r) => r.state.context.world.station.hands)).toEqual(["glovedClean", "bare"]);
    const { accident } = hurtBareIn(bare);
    expect(accident.gloved).toBe(true);
    const ids = resumingSteps(smallProtocol, { list: "setUp", ...accident }).map((s) => s.id);
    expect(ids).toContain("resumeGloves");
  });

  it("is resumed as the hands are, where the flow puts no gloves on", () => {
    const [, light] = smallProtocol.setUp as [Step, Step];
    const note: EventFlow = { event: "note", asksItem: [], steps: [light], onwards: "continue" };
    const noting = inputFor({ ...smallProtocol, events: [...smallProtocol.events, note] });
    const noted = told(begun(noting), { type: "event.reported", event: "note" });
    expect(noted.state.context.world.flows).toHaveLength(1);
    expect(hurtBareIn(noted).accident.gloved).toBe(false);
  });
});
