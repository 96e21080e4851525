/** What carries over begins the next set-up; what a slip soiled is added to the breakdown. Walked on the real chart. */
import { describe, expect, it } from "vitest";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { walk } from "../../tests/support/walk";
import { Monitor } from "../check/monitor";
import { carriedOverSteps, isAdded, treatedBy } from "./addedSteps";
import type { Protocol } from "./protocol";
import { bundledProtocols } from "./protocols";
import { asProtocol } from "./readProtocol";
import { inUse, stepHere } from "./world";

const phase = (run: Run) => run.state.context.world.phase;
const faults = (run: Run) =>
  run.facts.flatMap((f) => (f.type === "v1.Deviation" || f.type === "v1.Refused" ? [JSON.stringify(f)] : []));
const here = ({ state }: Run) => stepHere(state.context.input, state.context.world);
const atWork = (run: Run) => phase(run) === "procedure";

describe.each(bundledProtocols.map((p) => [p.id, p] as const))("%s", (_id, protocol: Protocol) => {
  const everything = protocol.items.map((item) => item.id);

  it("begins the set-up with all that the session before left, and has it ready before its own first step", () => {
    const run = begun(inputFor(protocol, { carriedOver: everything }));
    expect(here(run)?.id.startsWith("carriedOver")).toBe(true);
    const own = walk(run, (r) => here(r)?.id === protocol.setUp[0]?.id);
    expect(faults(own)).toEqual([]);
    const { station, clocks } = own.state.context.world;
    expect(Object.values(station.items).filter((item) => item.condition === "soiled")).toEqual([]);
    expect([station.hands, clocks]).toEqual(["washed", {}]);
    expect(faults(walk(own, atWork))).toEqual([]);
    expect(phase(walk(own, atWork))).toBe("procedure");
  });

  it("begins as written where nothing was left", () => {
    expect(carriedOverSteps(protocol, [])).toEqual([]);
    expect(here(begun(inputFor(protocol)))?.id).toBe(protocol.setUp[0]?.id);
  });

  it("adds to the breakdown what a slip soiled and the breakdown would forget, and ends with everything ready", () => {
    const forgotten = protocol.items.filter((i) => i.role !== "sharp" && !treatedBy(protocol.breakdown).has(i.id));
    expect(forgotten.length).toBeGreaterThan(2);
    let run = walk(begun(inputFor(protocol)), atWork);
    expect(phase(run)).toBe("procedure");
    for (const { id } of forgotten) {
      run = told(run, { type: "event.reported", event: "touched", item: id });
      run = walk(run, (r) => r.state.context.world.flows.length === 0);
    }
    expect(run.state.context.world.added).toEqual(forgotten.map((i) => i.id));
    const before = faults(run).length;
    run = walk(told(run, { type: "procedure.finish" }), (r) => phase(r) === "breakdown" && here(r) === null);
    expect(run.facts.flatMap((f) => (f.type === "v1.StepDone" && isAdded(f.step) ? [f.step] : []))).toEqual([
      "addedWet",
      "addedFreshOff",
      "addedFreshHands",
      "addedFreshOn",
      "addedWipe",
    ]);
    expect(faults(run).slice(before)).toEqual([]);
    expect(inUse(run.state.context.world.sharps)).toBe(0);
    const closed = told(run, { type: "session.close" }, { type: "answer.confirm" });
    expect(closed.facts.at(-1)).toMatchObject({ type: "v1.SessionClosed", unready: [] });
  });
});

describe("a slip", () => {
  const [protocol] = bundledProtocols as [Protocol];
  const bottle = "inkBottles";

  it("in the breakdown, before its last gloves come off, is still added there", () => {
    let run = walk(begun(inputFor(protocol)), atWork);
    run = walk(told(run, { type: "procedure.finish" }), (r) => here(r)?.id === "cleanAll");
    run = told(run, { type: "event.reported", event: "touched", item: bottle });
    run = walk(run, (r) => phase(r) === "breakdown" && here(r) === null);
    expect(run.facts.some((f) => f.type === "v1.StepDone" && f.step === "addedWet")).toBe(true);
    const closed = told(run, { type: "session.close" }, { type: "answer.confirm" });
    expect(closed.facts.at(-1)).toMatchObject({ unready: [] });
  });

  it("on what the breakdown has wiped already is added, to be treated once more", () => {
    let run = walk(begun(inputFor(protocol)), atWork);
    run = walk(told(run, { type: "procedure.finish" }), (r) => here(r)?.id === "wipeTools");
    run = told(run, { type: "event.reported", event: "dropped", item: "lamp" });
    expect(run.state.context.world.added).toEqual(["lamp"]);
    run = walk(run, (r) => phase(r) === "breakdown" && here(r) === null);
    const closed = told(run, { type: "session.close" }, { type: "answer.confirm" });
    expect(closed.facts.at(-1)).toMatchObject({ unready: [] });
  });

  it("after them is carried over, and both records say so", () => {
    let run = walk(begun(inputFor(protocol)), atWork);
    run = walk(told(run, { type: "procedure.finish" }), (r) => phase(r) === "breakdown" && here(r) === null);
    run = told(run, { type: "event.reported", event: "dropped", item: bottle });
    run = walk(run, (r) => here(r) === null);
    const closed = told(run, { type: "session.close" }, { type: "answer.confirm" });
    expect(closed.facts.at(-1)).toMatchObject({ unready: [bottle] });
    const next = begun(inputFor(protocol, { carriedOver: [bottle] }));
    expect(next.state.context.world.station.items[bottle]?.soiledBy).toEqual(["session before"]);
    expect(next.state.context.input.carriedOver).toEqual([bottle]);
  });

  it("taken back takes its item back, too", () => {
    let run = walk(begun(inputFor(protocol)), atWork);
    run = told(run, { type: "event.reported", event: "touched", item: bottle });
    expect(run.state.context.world.added).toEqual([bottle]);
    run = told(run, { type: "report.undo" }, { type: "answer.confirm" });
    expect(run.state.context.world.added).toEqual([]);
  });

  it("adds nothing that the breakdown treats anyway", () => {
    const m = new Monitor(protocol);
    m.tell({ type: "event.reported", event: "dropped", item: "lamp" });
    expect(m.world.added).toEqual([]);
  });
});

describe.each(bundledProtocols.map((p) => [p.id, p] as const))("a slip in the breakdown of %s", (_id, protocol) => {
  const inBreakdown = (at: string): Run => {
    const run = walk(begun(inputFor(protocol)), atWork);
    return walk(told(run, { type: "procedure.finish" }), (r) => here(r)?.id === at);
  };
  const over = (run: Run) => phase(run) === "breakdown" && here(run) === null;
  const last = protocol.breakdown.findIndex((s) => s.id === "lastHands");
  const gloved = protocol.breakdown.slice(0, last).map((s) => s.id);

  it.each(["tornBarrier", "dropped"] as const)(
    "at any step of it, %s: what is soiled is cleaned, wetted and wiped, and the walk never sticks there",
    (event) => {
      const ends = gloved.map((at) => {
        // Told while gloved: with bare hands nothing is torn or picked up.
        const before = inBreakdown(at);
        if (!before.state.context.world.station.hands.startsWith("gloved")) return [at, []];
        const slipped = told(before, { type: "event.reported", event, item: "lamp" });
        const run = told(walk(slipped, over), { type: "session.close" }, { type: "answer.confirm" });
        const closed = run.facts.at(-1);
        return [at, closed?.type === "v1.SessionClosed" ? closed.unready : here(run)?.id];
      });
      expect(ends).toEqual(gloved.map((at) => [at, []]));
    },
  );

  it("of a torn barrier asks for no new one there, and for one before", () => {
    const asked = (run: Run) => {
      const flow = walk(told(run, { type: "event.reported", event: "tornBarrier", item: "lamp" }), (r) => {
        return r.state.context.world.flows.length === 0;
      });
      return flow.facts.slice(run.facts.length).some((f) => f.type === "v1.StepEntered" && f.step === "tornBarrierNew");
    };
    const dressed = (r: Run) => here(r)?.id === protocol.dressing[0]?.id;
    const work = walk(begun(inputFor(protocol)), atWork);
    expect(asked(work)).toBe(true);
    expect(asked(walk(told(work, { type: "procedure.finish" }), dressed))).toBe(true);
    for (const step of ["sharpsFirst", "uncoverAll", "wipeFurniture"]) expect(asked(inBreakdown(step))).toBe(false);
  });

  it("of what was cleaned already, or is wet, leaves it out until it is cleaned again, and says so where it would be wetted", () => {
    const isOneStep = protocol.products.some((p) => p.use === "surfaceDisinfectant" && p.label.oneStep);
    const slipped = told(inBreakdown("wetFurniture"), { type: "event.reported", event: "dropped", item: "lamp" });
    const run = walk(slipped, over);
    const since = run.facts.slice(slipped.facts.length);
    const wet = since.filter((f) => f.type === "v1.WetClockStarted" && f.surface === "lamp").length;
    const added = since.some((f) => f.type === "v1.StepDone" && f.step === "addedWet");
    const said = since.some((f) => f.type === "v1.Refused" && f.reason === "cleanFirst" && f.item === "lamp");
    expect({ added, said, wet }).toEqual({ added: !isOneStep, said: !isOneStep, wet: 1 });
    const later = told(inBreakdown("wetTools"), { type: "event.reported", event: "dropped", item: "lamp" });
    // A label that cleans in the same step lets its clock begin again; under another, dirt is cleaned off first.
    expect(later.state.context.world.clocks.lamp?.state).toBe(isOneStep ? "dry" : undefined);
  });
});

describe("the names of added steps", () => {
  it("are not a protocol's to use", () => {
    const [protocol] = bundledProtocols as [Protocol];
    const [first, ...rest] = protocol.setUp;
    const stolen = { ...protocol, setUp: [{ ...first, id: "addedWet" }, ...rest] };
    expect(asProtocol(stolen)).toMatchObject({ ok: false, trouble: { code: "duplicate-id", at: "$.setUp[0].id" } });
  });
});
