/**
 * The checker is checked: on small protocols, made and broken at random, "proved" is never said where walking the real
 * chart finds a breach, every story told happens there, and what is judged beforehand is what the fold then says.
 */
import { fc, test as property } from "@fast-check/vitest";
import { afterAll, describe, expect, it } from "vitest";
import { decide } from "../../machines/session/decide";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { checkProtocol } from "../../src/check/checkProtocol";
import { brokenIn, Monitor } from "../../src/check/monitor";
import { tell, tellOne } from "../../src/check/telling";
import { type Effect, type Protocol, type Step, WasteStream } from "../../src/session/protocol";
import { stepById } from "../../src/session/world";
import { longProtocol } from "../bench/longProtocol";
import { isHarmless, movesAt } from "../mutants/bruteForce";
import { anySaid, anyStart } from "../support/anyEvents";
import { runs } from "../support/runs";
import { begun, inputFor } from "../support/session";
import { smallProtocol } from "../support/smallProtocol";
import { tinyProtocol } from "../support/tinyProtocol";

const whole = longProtocol(20, 2);

const anyEffectOn = (items: readonly string[]): fc.Arbitrary<Effect> =>
  fc.oneof(
    fc.record({ verb: fc.constantFrom("wash" as const, "rub" as const, "don" as const, "doff" as const) }),
    fc.record({
      verb: fc.constantFrom(
        ...(["touch", "cover", "uncover", "open", "preClean", "wipe", "bring", "takeAway", "park", "unpark"] as const),
        "breakSkin" as const,
      ),
      item: fc.constantFrom(...items),
    }),
    fc.record({ verb: fc.constant("apply" as const), item: fc.constantFrom(...items), product: fc.constant("spray") }),
    fc.record({
      verb: fc.constant("discard" as const),
      item: fc.constantFrom(...items),
      into: fc.constantFrom(...WasteStream.options),
      all: fc.boolean(),
    }),
  );

type Cut = { readonly list: number; readonly at: number; readonly how: number; readonly effect: Effect };
const anyCutOf = (base: Protocol): fc.Arbitrary<Cut> =>
  fc.record({
    list: fc.nat({ max: 3 + base.events.length }),
    at: fc.nat({ max: 40 }),
    // A step that falls away is what goes wrong most.
    how: fc.constantFrom(0, 0, 0, 1, 2, 3, 4, 5),
    effect: anyEffectOn(base.items.map((i) => i.id)),
  });

/** One list with one thing changed: a step gone, two swapped, one allowed to be left out, an effect more, less or other. */
function cut(steps: readonly Step[], { at, how, effect }: Cut): Step[] {
  const i = at % steps.length;
  const here = steps[i] as Step;
  const [before, after] = [steps.slice(0, i), steps.slice(i + 1)];
  const count = here.kind === "count";
  if (how === 0 && steps.length > 1) return [...before, ...after];
  if (how === 1 && after.length > 0) return [...before, after[0] as Step, here, ...after.slice(1)];
  if (how === 2) return [...before, { ...here, skippable: true }, ...after];
  if (how === 3 && !count) return [...before, { ...here, effects: [...here.effects, effect] }, ...after];
  if (how === 4) return [...before, { ...here, effects: here.effects.slice(1) }, ...after];
  return count ? [...steps] : [...before, { ...here, effects: [effect] }, ...after];
}

const changed = (protocol: Protocol, one: Cut): Protocol => {
  const lists = ["setUp", "dressing", "breakdown", "resuming"] as const;
  const name = lists[one.list];
  if (name) return { ...protocol, [name]: cut(protocol[name], one) };
  const events = protocol.events.map((f, i) =>
    i === one.list - lists.length ? { ...f, steps: cut(f.steps, one) } : f,
  );
  return { ...protocol, events };
};

const brokenFrom = (base: Protocol, most: number) =>
  fc.array(anyCutOf(base), { minLength: 0, maxLength: most }).map((cuts) => cuts.reduce(changed, base));
const anyProtocol = brokenFrom(whole, 3);
/** So small that it is walked whole in less than a second. */
const anyTiny = brokenFrom(tinyProtocol, 4);

const said = { proved: 0, breach: 0, notProved: 0 };
afterAll(() => {
  const all = said.proved + said.breach + said.notProved;
  console.log(`${all} protocols: ${said.proved} proved, ${said.breach} with a breach, ${said.notProved} not proved`);
});

describe("the checker", () => {
  it("proves the protocol that the others are made from", () => {
    expect(checkProtocol(whole).verdict).toBe("proved");
    expect(isHarmless(whole, 60_000)).toMatchObject({ ok: true });
  });

  it("proves the tiny one, and the real chart walks it whole without a breach", () => {
    expect(checkProtocol(tinyProtocol).verdict).toBe("proved");
    expect(isHarmless(tinyProtocol, 10_000)).toMatchObject({ ok: true });
  });

  const isRight = (protocol: Protocol, most: number): void => {
    const found = checkProtocol(protocol);
    said[found.verdict] += 1;
    if (found.verdict === "proved") expect(isHarmless(protocol, most).words).toMatch(/^(nothing found|all of)/);
    if (found.verdict !== "breach") return;
    for (const breach of found.breaches) {
      const again = tell(protocol, breach.moves);
      expect(again.broken).toContain(breach.rule);
      expect(again.at).toBe(breach.moves.length - 1);
    }
  };
  property.prop([anyTiny], { numRuns: runs(250), endOnFailure: true })(
    "never says proved where the real chart, walked whole, meets a breach; and every story happens there",
    (protocol) => isRight(protocol, 10_000),
  );
  property.prop([anyProtocol], { numRuns: runs(60), endOnFailure: true })(
    "nor on a larger one, as far as it is walked",
    (protocol) => isRight(protocol, 3_000),
  );

  property.prop([anyProtocol, fc.array(fc.nat({ max: 99 }), { minLength: 20, maxLength: 90 })], { numRuns: runs(80) })(
    "judges each step as the fold of its facts then says, and finds all that the station finds",
    (protocol, choices) => {
      const m = new Monitor(protocol);
      for (const choice of choices) {
        const moves = movesAt(m, protocol);
        const move = moves[choice % Math.max(1, moves.length)];
        if (!move) return;
        const from = m.facts.length;
        const ahead = move.kind === "done" && m.here()?.id === move.step.id ? m.judge(move.step) : null;
        const { broken, stuck } = tellOne(m, move);
        if (broken.length > 0 || stuck) return;
        expect(brokenIn(m.facts.slice(from))).toEqual([]);
        if (!ahead) continue;
        expect(m.hands().hands).toBe(ahead.hands.hands);
        for (const [id, thing] of ahead.things) {
          const waited = thing.wetness === "wet" ? { wetness: m.thing(id).wetness } : {};
          expect(m.thing(id)).toMatchObject({
            condition: thing.condition,
            barrier: thing.barrier,
            at: thing.at,
            ...waited,
          });
        }
      }
    },
  );

  property.prop([anyStart, fc.array(anySaid, { maxLength: 50 })], { numRuns: runs(300) })(
    "may leave slips and odd orders unwalked: whatever came before, what would be unsafe is read out with a refusal",
    (start, more) => {
      const input = inputFor(smallProtocol);
      let { state } = begun(input);
      for (const event of [...start, ...more] as SessionEvent[]) {
        const { next, facts } = decide(state, event);
        const entered = facts.findLast((f) => f.type === "v1.StepEntered");
        const step = entered?.type === "v1.StepEntered" ? stepById(input, entered.step) : undefined;
        const ready = decide(next, { type: "step.done" });
        const done = ready.facts.find((f) => f.type === "v1.StepDone");
        if (step && done?.type === "v1.StepDone" && done.step === step.id) {
          const unsafe = brokenIn(ready.facts);
          if (unsafe.length > 0) expect(facts.some((f) => f.type === "v1.Refused")).toBe(true);
        }
        state = next;
      }
    },
  );
});
