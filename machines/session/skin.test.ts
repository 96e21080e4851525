/** The client's skin on the real chart: antiseptic before the first line, no clock, and nothing said twice. */
import { describe, expect, it } from "vitest";
import type { Effect, Item, Protocol, Step } from "../../src/session/protocol";
import { skinAntisepticA } from "../../src/session/protocols/products";
import { unready } from "../../src/session/station";
import { kindsIn } from "../../src/session/world";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { namingOf } from "./answers";
import { listenedFor } from "./listenedFor";
import type { SessionEvent } from "./vocabulary";

const [chair] = smallProtocol.items as [Item];
const skin: Item = { ...chair, id: "skin", calledAs: { en: "skin" }, role: "skin", spaulding: "semicritical" };
const [first] = smallProtocol.setUp as [Step];
const step = (id: string, ...effects: Effect[]): Step => ({ ...first, id, effects });
const hands = [step("hands", { verb: "wash" }), step("gloves", { verb: "don" })];
const prepare = step("prepare", { verb: "apply", item: "skin", product: skinAntisepticA.id });
const open = step("open", { verb: "open", item: "needle" });
const line = (id: string) => step(id, { verb: "breakSkin", item: "needle" }, { verb: "breakSkin", item: "cup" });
const wrap = step("wrap", { verb: "cover", item: "skin" });

const withSetUp = (setUp: Step[], expiry: string | null = null): Protocol => ({
  ...smallProtocol,
  items: [...smallProtocol.items, skin],
  products: [...smallProtocol.products, { ...skinAntisepticA, label: { ...skinAntisepticA.label, expiry } }],
  setUp,
});
const done: SessionEvent = { type: "step.done" };
const times = (n: number): SessionEvent[] => Array.from({ length: n }, () => done);
const walked = (protocol: Protocol, steps: number): Run => told(begun(inputFor(protocol)), ...times(steps));
const refusals = (run: Run) => run.facts.flatMap((f) => (f.type === "v1.Refused" ? [[f.reason, f.item]] : []));
const deviations = (run: Run) => run.facts.flatMap((f) => (f.type === "v1.Deviation" ? [[f.code, f.item]] : []));
const skinOf = (run: Run) => run.state.context.world.station.items.skin;

describe("the first line", () => {
  it("is held back, with the reason, while the skin has had no antiseptic", () => {
    const run = walked(withSetUp([...hands, open, line("begin"), wrap]), 3);
    expect(refusals(run)).toEqual([["skinFirst", "skin"]]);
  });

  it("is recorded once where it is drawn all the same, however much of the step meets the skin and whatever comes later", () => {
    const run = walked(withSetUp([...hands, open, line("begin"), line("second"), wrap]), 5);
    expect(deviations(run)).toEqual([["skinNotPrepared", "skin"]]);
    expect(refusals(run)).toEqual([["skinFirst", "skin"]]);
  });

  it("is asked for without a word once antiseptic went on, and no clock counts for it", () => {
    const prepared = walked(withSetUp([...hands, prepare, open, line("begin"), wrap]), 3);
    expect(prepared.state.context.world.clocks).toEqual({});
    expect(listenedFor(walked(withSetUp([...hands, prepare, open, line("begin"), wrap]), 2).state)).not.toContain(
      "applied",
    );
    const run = told(prepared, ...times(2));
    expect([...refusals(run), ...deviations(run)]).toEqual([]);
  });

  it("is held back after an antiseptic past its date, which counts for nothing", () => {
    const old = withSetUp([...hands, prepare, open, line("begin"), wrap], "2001-01-01");
    const run = walked(old, 4);
    expect(refusals(run)).toEqual([
      ["outOfDate", skinAntisepticA.id],
      ["skinFirst", "skin"],
    ]);
    expect(deviations(run)).toEqual([["appliedOutOfDate", "skin"]]);
  });

  it("is held back once soiled gloves have touched the skin after its antiseptic", () => {
    const touched = step("touched", { verb: "touch", item: "chair" }, { verb: "touch", item: "skin" });
    const run = walked(withSetUp([...hands, prepare, open, touched, line("begin"), wrap]), 4);
    const dropped = told(run, { type: "event.reported", event: "dropped", item: "chair" }, done);
    expect(refusals(dropped).at(-1)).toEqual(["skinFirst", "skin"]);
  });
});

describe("a tattoo", () => {
  it("is covered with the gloves that made it, and is open again once the needle goes on", () => {
    const run = walked(withSetUp([...hands, prepare, open, line("begin"), wrap, line("more"), step("end")]), 6);
    expect(deviations(run)).toEqual([]);
    expect(skinOf(run)).toMatchObject({ barrier: "covered", condition: "clean", opened: true });
    expect(skinOf(told(run, done))?.barrier).toBe("none");
  });

  it("leaves with the client: nothing of it is to be made ready, and nobody is asked whether to touch it", () => {
    const protocol = withSetUp([...hands, prepare, open, line("begin"), wrap]);
    const run = walked(protocol, 4);
    const { world, input } = run.state.context;
    expect(unready(world.station, kindsIn(input))).not.toContain("skin");
    const quiet = { ...input, protocol: { ...protocol, events: [] } };
    expect(namingOf({ input: quiet, world }, "mayTouch").candidates).not.toContain("skin");
    expect(namingOf({ input: quiet, world }, "applied").candidates).not.toContain("skin");
    expect(namingOf({ input: quiet, world }, "outOfUse").candidates).not.toContain("skin");
  });
});
