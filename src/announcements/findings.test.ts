/** What the station finds is said when it matters, once, and in one sentence for all it concerns. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { decide } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { anySaid, anyStart } from "../../tests/support/anyEvents";
import { begun, inputFor, type Run, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { walk } from "../../tests/support/walk";
import type { SessionFact } from "../session/fact";
import type { Protocol, Step } from "../session/protocol";
import { stepHere } from "../session/world";
import { announce } from "./announce";
import { en } from "./en";
import { textOf, type Utterance } from "./utterance";

const done: SessionEvent = { type: "step.done" };

function moment(run: Run, event: SessionEvent): { said: readonly Utterance[]; facts: readonly SessionFact[] } {
  const { next, facts } = decide(run.state, event);
  const kept = { kept: true, event, way: { by: "touch" }, before: run.state, after: next, facts } as const;
  return { said: announce(en, kept), facts };
}

const withStep = (effects: Step["effects"]): Protocol => {
  const [wash, light, ...rest] = smallProtocol.setUp as [Step, Step];
  return { ...smallProtocol, setUp: [wash, { ...light, id: "odd", kind: "do", effects }, ...rest] };
};

describe("what the station finds", () => {
  it("on several things in one step is one sentence", () => {
    const protocol = withStep([
      { verb: "don" },
      { verb: "breakSkin", item: "needle" },
      { verb: "touch", item: "cup" },
      { verb: "touch", item: "bottle" },
      { verb: "touch", item: "lamp" },
    ]);
    const said = moment(told(begun(inputFor(protocol)), done), done).said.map(textOf);
    expect(said.filter((text) => text.includes("soiled gloves"))).toEqual([
      "Cup, bottle and lamp: touched with soiled gloves. It counts as soiled.",
    ]);
  });

  it("against the next step is said with that step, and again only when it is read again", () => {
    const protocol = withStep([{ verb: "don" }, { verb: "breakSkin", item: "needle" }]);
    const [first, odd, , , ...rest] = protocol.setUp as [Step, Step, Step, Step];
    const bottle: Step = { ...odd, id: "fetchBottle", effects: [{ verb: "touch", item: "bottle" }] };
    const run = told(begun(inputFor({ ...protocol, setUp: [first, odd, bottle, ...rest] })), done);
    const entering = moment(run, done);
    expect(entering.said.map(textOf)).toContain("Bottle: your gloves are soiled. Change them first.");
    const there = told(run, done);
    expect(moment(there, { type: "time.witnessed", elapsedMs: 5_000 }).said).toEqual([]);
    const told2 = moment(there, done).said.map(textOf);
    expect(told2).toContain("Bottle: touched with soiled gloves. It counts as soiled.");
    expect(told2).not.toContain("Bottle: your gloves are soiled. Change them first.");
  });

  it("of a slip is silent where nothing was soiled by it", () => {
    const run = told(begun(inputFor(smallProtocol)), ...Array.from({ length: 7 }, () => done));
    const said = moment(run, { type: "event.reported", event: "touched", item: "lamp" }).said.map(textOf);
    expect(said).toEqual(["Lamp, noted."]);
  });

  property.prop([anyStart, fc.array(anySaid, { maxLength: 40 })])(
    "is never said twice for one thing that happened",
    (start, more) => {
      let run = begun(inputFor(smallProtocol));
      for (const event of [...start, ...more]) {
        const { said, facts } = moment(run, event);
        const codes = new Set(facts.flatMap((f) => (f.type === "v1.Deviation" ? [f.code] : [])));
        const findings = said
          .map((u) => u.key)
          .filter((key) => key.startsWith("deviation:") && !key.includes("neverWet"));
        expect(findings.length).toBeLessThanOrEqual(codes.size);
        expect(new Set(findings).size).toBe(findings.length);
        run = told(run, event);
      }
    },
  );
});

describe("what is left", () => {
  const left = (run: Run): string => {
    const [answer] = moment(run, { type: "ask.whatLeft" }).said.map(textOf);
    return /Not ready yet: ([^.]*)\./.exec(answer ?? "")?.[1] ?? "nothing";
  };
  const isAt =
    (id: string) =>
    ({ state: { context } }: Run): boolean =>
      stepHere(context.input, context.world)?.id === id;

  it("names in the set-up what the session before left unready, until that is treated", () => {
    const run = begun(inputFor(smallProtocol, { carriedOver: ["lamp"] }));
    expect(left(run)).toBe("lamp");
    expect(left(walk(run, isAt("washHands")))).toBe("nothing");
  });

  it("names in the breakdown each thing that is not yet safe for the next client, and nothing once all is", () => {
    const working = walk(begun(inputFor(smallProtocol)), (r) => r.state.context.world.phase === "procedure");
    const run = walk(told(working, { type: "procedure.finish" }), isAt("cupAway"));
    expect(left(run)).toBe("chair, lamp and cup");
    expect(left(walk(run, isAt("wipeLamp")))).toBe("lamp");
    expect(left(walk(run, isAt("lastGlovesOff")))).toBe("nothing");
  });
});
