import { describe, expect, it } from "vitest";
import { beginBreakdown, relabelled, workThrough } from "../../tests/support/artistAtWork";
import type { SessionFact } from "../session/fact";
import type { Protocol } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { wholeBreakdown } from "../turnaround/breakdown/derive";
import { breaches } from "../turnaround/checks/breaches";
import { type PlannerPort, plannerHere } from "../turnaround/plannerPort";
import { solve } from "../turnaround/solve";

const called = (id: string): Protocol => bundledProtocols.find((p) => p.id === id) ?? (bundledProtocols[0] as Protocol);
const cartridge = called("cartridgeMachine");
const deviations = (facts: readonly SessionFact[]) => facts.filter((f) => f.type === "v1.Deviation");
const inBreakdown = (facts: readonly SessionFact[]) =>
  facts.slice(facts.findIndex((f) => f.type === "v1.PhaseEntered" && f.phase === "breakdown"));
const labelsOf = (protocol: Protocol) => Object.fromEntries(protocol.products.map((p) => [p.id, p.label]));
const said = ({ voice }: { voice: { story: readonly { what: string; text: string }[] } }) =>
  voice.story.flatMap(({ what, text }) => (what === "said" ? [text] : []));
const readyTimes = (at: Parameters<typeof said>[0]) => said(at).filter((text) => text.includes("ll ready in"));

describe("a breakdown led by the plan", () => {
  it("begins with when the station will be ready, and is ready then", async () => {
    const at = await beginBreakdown(cartridge, plannerHere());
    const worked = await workThrough(at);
    const plan = solve(wholeBreakdown({ protocol: cartridge, labels: labelsOf(cartridge) }));
    expect(readyTimes(at)).toEqual(["All ready in twenty-four minutes."]);
    expect(plan).toMatchObject({ kind: "planned", readySec: 1440, proved: true });
    expect(worked).toEqual({ sec: 1440, idleSec: 0, rewettings: 4 });
  });

  it("asks for wetting again before the gloves are changed, one thing at a time, and loses no surface by it", async () => {
    const at = await beginBreakdown(cartridge, plannerHere());
    await workThrough(at);
    const asked = at.facts.flatMap((f) => (f.type === "v1.ReapplyPlanned" ? [f.surface] : []));
    expect(asked[0]).toBe("lamp");
    expect(new Set(asked).size).toBe(asked.length);
    expect(inBreakdown(at.facts).filter((f) => f.type === "v1.WetClockLapsed")).toEqual([]);
    expect(deviations(at.facts)).toEqual([]);
  });

  it.each(
    bundledProtocols.flatMap(
      (p) =>
        [
          [p.id, 180],
          [p.id, 600],
        ] as const,
    ),
  )(
    "of %s ends within the hour with every surface ready, at %i s of contact to be wetted again in 240",
    async (id, contactSec) => {
      const at = await beginBreakdown(relabelled(called(id), { contactSec, reapplyWithinSec: 240 }), plannerHere());
      const { sec } = await workThrough(at);
      expect(sec).toBeLessThan(3_600);
      expect(deviations(at.facts)).toEqual([]);
      expect(at.companion.state.context.world.clocks).toEqual({});
    },
  );

  it("answers how long with the station first", async () => {
    const at = await beginBreakdown(cartridge, plannerHere());
    await new Promise((turn) => setImmediate(turn));
    at.voice.pass(60_000);
    await at.companion.tell({ type: "ask.howLong" }, { by: "voice", confidence: 1 });
    expect(said(at).at(-1)).toBe("All ready in twenty-four minutes.");
  });

  it("does not count what is out of use, and names it with the time", async () => {
    const tools = ["machine", "secondMachine", "washBottle", "sprayBottle"];
    const at = await beginBreakdown(cartridge, plannerHere());
    for (const item of tools) await at.companion.tell({ type: "item.outOfUse", item }, { by: "touch" });
    await new Promise((turn) => setImmediate(turn));
    const { plan, problem } = at.companion.forecast as NonNullable<typeof at.companion.forecast>;
    const whole = wholeBreakdown({ protocol: cartridge, labels: labelsOf(cartridge) });
    const seconds = (tasks: typeof whole.tasks) =>
      ["cleanAll", "wetTools", "wipeTools"].map((id) => tasks.find((t) => t.id === id)?.handsOnSec);
    // Eleven things are cleaned in 240 s as written, and eight of them now; of both steps for tools nothing is left.
    expect(seconds(whole.tasks)).toEqual([240, 45, 60]);
    expect(seconds(problem.tasks)).toEqual([175, 1, 1]);
    expect(problem.tasks.flatMap((t) => (t.wet ? [t.id] : []))).toEqual(["wetFurniture", "wetElectrics"]);
    expect(plan.readySec).toBeLessThan(1440 - 100);
    at.voice.pass(60_000);
    await at.companion.tell({ type: "ask.howLong" }, { by: "voice", confidence: 1 });
    expect(said(at).at(-1)).toMatch(
      /^All ready in .* minutes?.*\. Out of use: machine, second machine, wash bottle and spray bottle\.$/i,
    );
    const { sec } = await workThrough(at);
    expect(sec).toBeLessThan(1440 + 60);
  });

  it("goes on as written where the planner does not answer, and says no time", async () => {
    const silent: PlannerPort = { ask: async () => null, close() {} };
    const at = await beginBreakdown(relabelled(cartridge, { reapplyWithinSec: null }), silent);
    const worked = await workThrough(at);
    expect(readyTimes(at)).toEqual([]);
    expect(worked.sec).toBe(1360);
    expect(at.facts.filter((f) => f.type === "v1.PlanChosen")).toEqual([]);
  });

  it("puts what has to stay wet longest first where the list leaves it free, and leads in that order", async () => {
    // The furniture's product asks for ten minutes and is written last; the others' asks for one.
    const quick = relabelled(cartridge, { contactSec: 60, reapplyWithinSec: null });
    const [product] = quick.products as [Protocol["products"][number]];
    const slow = { ...product, id: "slow", label: { ...product.label, contactSec: 600 } };
    const furniture = ["lamp", "worktop", "armRest", "chair"];
    const slowly = (steps: Protocol["setUp"]): Protocol["setUp"] =>
      steps.map((s) => ({
        ...s,
        effects: s.effects.map((e) =>
          e.verb === "apply" && furniture.includes(e.item) ? { ...e, product: "slow" } : e,
        ),
      }));
    const swap: Record<string, string> = { wetFurniture: "wetTools", wetTools: "wetFurniture" };
    const breakdown = slowly(quick.breakdown);
    const protocol: Protocol = {
      ...quick,
      products: [...quick.products, slow],
      setUp: slowly(quick.setUp),
      breakdown: breakdown.flatMap((s) => breakdown.find((other) => other.id === (swap[s.id] ?? s.id)) ?? []),
    };
    const led = await beginBreakdown(protocol, plannerHere());
    const worked = await workThrough(led);
    const asWritten = await workThrough(await beginBreakdown(protocol));
    const walked = inBreakdown(led.facts).flatMap((f) =>
      f.type === "v1.StepDone" && f.step.startsWith("wet") ? [f.step] : [],
    );
    expect(walked.indexOf("wetFurniture")).toBe(0);
    expect(led.facts.some((f) => f.type === "v1.PlanChosen")).toBe(true);
    expect(worked.sec).toBeLessThan(asWritten.sec);
    expect(deviations(led.facts)).toEqual([]);
  });

  it("says once that it will be later, when a surface was found dry at the end of its time", async () => {
    const at = await beginBreakdown(cartridge, plannerHere());
    const worked = await workThrough(at, { foundDry: ["sprayBottle"] });
    expect(readyTimes(at).map((text) => text.replace(/in .*/, ""))).toEqual([
      "All ready ",
      "Later than planned: all ready ",
    ]);
    expect(worked.sec).toBeGreaterThan(1440);
  });
});

describe("every plan that the session makes", () => {
  it("keeps every rule of hygiene, as a strict supervisor reads it", async () => {
    const seen: string[][] = [];
    const watching: PlannerPort = {
      ask: async (problem) => {
        const answer = await plannerHere().ask(problem);
        if (answer?.kind === "planned") seen.push(breaches(problem, answer));
        return answer;
      },
      close() {},
    };
    await workThrough(await beginBreakdown(called("autoclavedTubes"), watching));
    expect(seen.length).toBeGreaterThan(50);
    expect(seen.flat()).toEqual([]);
  });
});
