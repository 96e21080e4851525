/** The catalogue, and the five rules of gloves and hands by name. Each: its protocol proved, and a breach once broken. */
import { describe, expect, it } from "vitest";
import { longProtocol } from "../../tests/bench/longProtocol";
import { tinyProtocol } from "../../tests/support/tinyProtocol";
import { meetings } from "../session/contact";
import { DeviationCode } from "../session/fact";
import type { Effect, Item, Protocol, Step } from "../session/protocol";
import { autoclavedTubes } from "../session/protocols/autoclavedTubes";
import { conventionBooth } from "../session/protocols/conventionBooth";
import { applyEffect, kindsOf, type Station, stationAtStart } from "../session/station";
import { findingRules, handRules, movements } from "../session/transfer";
import { type Breach, checkProtocol } from "./checkProtocol";
import { graphOf, type Node } from "./graph";
import { type RuleId, ruleIds, rules, slipCodes } from "./rules";
import { storyOf } from "./story";
import { checkEn } from "./words/en";

const whole = longProtocol(20, 2);

const brokenBy = (protocol: Protocol): RuleId[] => {
  const found = checkProtocol(protocol);
  return found.verdict === "breach" ? found.breaches.map((b) => b.rule) : [];
};
const inFlow = (p: Protocol, event: string, change: (steps: Step[]) => Step[]): Protocol => ({
  ...p,
  events: p.events.map((f) => (f.event === event ? { ...f, steps: change(f.steps) } : f)),
});
const inList = (p: Protocol, list: "setUp" | "breakdown", change: (steps: Step[]) => Step[]): Protocol => ({
  ...p,
  [list]: change(p[list]),
});
const drop =
  (...ids: string[]) =>
  (steps: Step[]): Step[] =>
    steps.filter((s) => !ids.includes(s.id));

describe("the catalogue", () => {
  it("puts every finding of the station under exactly one rule, or names it a slip", () => {
    const placed = [...ruleIds.flatMap((id) => rules[id].codes), ...slipCodes];
    expect(placed.toSorted()).toEqual(DeviationCode.options.toSorted());
  });

  it("gives every rule plain words and a source, or says that it has none", () => {
    const poor = ruleIds.filter(
      (id) => rules[id].words.length < 20 || !/\d|common practice|label|CDC/.test(rules[id].source),
    );
    expect(poor).toEqual([]);
  });
});

/**
 * CDC, glove use (as copied by county and school health offices), and WHO 2009, hand hygiene: gloves are no substitute;
 * hand hygiene before they go on; hand hygiene as soon as they come off; change them when damaged, visibly soiled, or
 * between a soiled and a clean site; never the same pair for two clients. 29 CFR 1910.1030 (d)(2)(v) and (d)(3)(ix),
 * from memory: hands after gloves; gloves not washed for re-use, replaced when torn or contaminated.
 */
describe("the five rules of gloves and hands (CDC and WHO 2009)", () => {
  it("hold where nothing is broken", () => {
    expect(checkProtocol(whole).verdict).toBe("proved");
  });

  it("1: gloves do not replace hand hygiene", () => {
    expect(brokenBy(inFlow(whole, "freshGloves", drop("freshHands")))).toContain("handsBeforeGloves");
  });

  it("2: hand hygiene before gloves go on", () => {
    expect(brokenBy(inList(whole, "setUp", drop("firstHands")))).toContain("handsBeforeGloves");
  });

  it("3: hand hygiene as soon as gloves come off", () => {
    // The client leaves and the artist goes with bare hands: nothing else in the flow would tell.
    const broken = inFlow(conventionBooth, "clientLeaves", drop("clientLeavesHands"));
    expect(brokenBy(broken)).toContain("handsAfterGloves");
    expect(brokenBy(inList(whole, "breakdown", drop("lastHands")))).toEqual(["handsLast"]);
  });

  it("4: gloves are changed when damaged, soiled by what was not planned, or between soiled and clean work", () => {
    expect(brokenBy(inFlow(whole, "tornGlove", drop("tornOff", "tornHands", "tornOn")))).toContain(
      "damagedOrSoiledGlovesChanged",
    );
    expect(brokenBy(inList(whole, "setUp", drop("round0Off", "round0Hands", "round0On")))).toContain(
      "freshGlovesForCleanWork",
    );
  });

  it("5: the same gloves never serve twice: not washed, not worn over one another, not kept for the next client", () => {
    expect(brokenBy(inFlow(whole, "freshGloves", drop("freshOff")))).toContain("glovesAreNotWashed");
    expect(brokenBy(inFlow(whole, "freshGloves", drop("freshOff", "freshHands")))).toContain("oneGloveOverAnother");
    expect(brokenBy(inList(whole, "breakdown", drop("lastOff", "lastHands")))).toEqual(["handsLast"]);
  });
});

describe("gloves off, a touch, gloves on", () => {
  const start: Station = {
    hands: "glovedClean",
    handsSoiledBy: [],
    items: stationAtStart(conventionBooth.items, []).items,
  };
  const codes = (...effects: Effect[]) => {
    let station = start;
    return effects.flatMap((effect) => {
      const outcome = applyEffect(station, effect, kindsOf(conventionBooth.items));
      station = outcome.station;
      return outcome.findings.map((f) => f.code);
    });
  };
  // Constructed from CDC, hand hygiene before donning and immediately after removing gloves.
  it("fails without hand hygiene between, and passes with it", () => {
    expect(codes({ verb: "doff" }, { verb: "touch", item: "screen" }, { verb: "don" })).toEqual([
      "glovesOverUnwashedHands",
    ]);
    expect(codes({ verb: "doff" }, { verb: "wash" }, { verb: "don" })).toEqual([]);
    expect(codes({ verb: "doff" }, { verb: "rub" }, { verb: "don" })).toEqual([]);
  });
});

describe("the tables of the station", () => {
  const rows = [...Object.values(movements), ...findingRules, ...handRules, ...meetings];
  it("name a source for each row, or say that it is common practice", () => {
    const poor = rows.filter(
      ({ source }) => !/WHO|CDC|CFR|Spaulding|NEHA|label|common practice, no source/.test(source),
    );
    expect(poor).toEqual([]);
    expect(rows.length).toBeGreaterThan(30);
  });

  it("find nothing that the catalogue does not place", () => {
    const found = new Set([...findingRules, ...handRules].map((r) => r.code));
    const placed = new Set([...ruleIds.flatMap((id) => rules[id].codes), ...slipCodes]);
    expect([...found].filter((code) => !placed.has(code))).toEqual([]);
  });
});

describe("a suspicion that is looked into by following more", () => {
  // Once, what was wrong with the hands alone was no longer seen as soon as a thing or the sharps were followed, too.
  it("does not lose sight of the hands", () => {
    const resuming = drop("resumingFreshHands")(conventionBooth.resuming);
    expect(brokenBy({ ...conventionBooth, resuming })).toContain("handsBeforeGloves");
  });
});

describe("a breach at the first thing of a step of the breakdown", () => {
  it("is told with that step", () => {
    const broken = inList(conventionBooth, "breakdown", drop("wasteGlovesOff", "wasteGlovesHands", "wasteGlovesOn"));
    expect(brokenBy(broken)).toContain("freshGlovesForCleanWork");
  });
});

describe("a box for used instruments", () => {
  // 29 CFR 1910.1030(d)(4)(ii)(E), from memory: reusable containers for waste are decontaminated.
  it("is soiled by what goes into it, so that forgetting it is a breach", () => {
    const forgotten = inList(autoclavedTubes, "breakdown", (steps) =>
      steps.map((s) => ({
        ...s,
        effects: s.effects.filter((e) => !("item" in e && e.item === "instrumentBox" && e.verb !== "fill")),
      })),
    );
    expect(brokenBy(forgotten)).toEqual(["reusableReady"]);
  });
});

describe("an accident while resuming from another", () => {
  const step = (id: string, effects: Effect[]): Step => ({
    ...(tinyProtocol.resuming[0] as Step),
    id,
    effects,
    atWork: true,
  });
  const [lamp] = tinyProtocol.items as [Item];
  const kit: Item = { ...lamp, id: "kit", starts: { condition: "clean", barrier: "none", at: "away" } };
  const [off, hands, on, sharps, ...rest] = tinyProtocol.resuming as [Step, Step, Step, Step, ...Step[]];
  const brought = step("kitOut", [{ verb: "bring", item: "kit" }]);
  const away = step("kitAway", [{ verb: "takeAway", item: "kit" }]);
  const [fresh, needle] = [rest.slice(0, -1), rest.slice(-1)];
  const withKit = (used: Step[], wiped: Step[]): Protocol => ({
    ...tinyProtocol,
    items: [...tinyProtocol.items, kit],
    resuming: [off, hands, on, brought, sharps, ...used, ...fresh, ...wiped, away, ...needle],
  });

  it("is walked: what is safe once, and again after work, may not be in the middle", () => {
    const used = step("kitUsed", [{ verb: "fill", item: "kit" }]);
    const wet = step("kitWet", [{ verb: "apply", item: "kit", product: "spray" }]);
    const found = checkProtocol(withKit([used, wet], [step("kitWipe", [{ verb: "wipe", item: "kit" }])]));
    const breach = found.verdict === "breach" ? found.breaches[0] : undefined;
    expect(breach).toMatchObject({ rule: "bottlesAway", step: "kitOut" });
    expect(breach?.moves.filter((m) => m.kind === "exposure")).toHaveLength(2);
  });

  it("is no breach where what is brought stays clean", () => {
    expect(checkProtocol(withKit([], [])).verdict).toBe("proved");
  });
});

describe("a needle that does not come sterile", () => {
  // Spaulding 1968: what enters sterile tissue is sterile.
  it("is a breach where it is opened, though a new one is opened each time", () => {
    const items = whole.items.map((i) =>
      i.role === "sharp" ? { ...i, starts: { ...i.starts, condition: "clean" as const } } : i,
    );
    expect(brokenBy({ ...whole, items })).toContain("sterileUnderTheSkin");
  });
});

describe("an accident with bare hands and a sharp out, in a list", () => {
  it("is walked: a protocol that then ends gloved, and asks to wash hands, is a breach", () => {
    const once = conventionBooth.resuming.filter((s) => !s.id.startsWith("resumingFresh"));
    const found = checkProtocol({ ...conventionBooth, resuming: once });
    expect(found.verdict).toBe("breach");
    const told = found.verdict === "breach" ? found.breaches : [];
    const hurt = told.find((b) => b.rule === "glovesAreNotWashed" || b.rule === "oneGloveOverAnother");
    expect(hurt?.moves.some((m) => m.kind === "exposure")).toBe(true);
  });
});

describe("a slip while resuming in a list, and an accident in its flow", () => {
  it.each(["setUp", "dressing", "breakdown"])("are walked: %s", (list) => {
    const { nodes } = graphOf(tinyProtocol);
    const by = (kind: "exposure" | "event") => (from: Node) =>
      from.out
        .filter((e) => e.move?.kind === kind)
        .flatMap((e) => nodes[e.to] ?? [])
        .filter((n) => n.list === list);
    const resuming = nodes.filter((n) => n.list === list).flatMap(by("exposure"));
    const slips = resuming.flatMap(by("event"));
    expect(resuming.length).toBeGreaterThan(0);
    expect(slips.every((n) => n.event !== null)).toBe(true);
    expect(slips.flatMap(by("exposure")).length).toBeGreaterThan(0);
  });
});

describe("the client's skin", () => {
  // Common practice, no source.
  const without = (p: Protocol): Protocol => {
    const isKept = (e: Effect) => !("item" in e) || e.item !== "skin";
    const steps = (list: readonly Step[]) => list.map((s) => ({ ...s, effects: s.effects.filter(isKept) }));
    const events = p.events.map((f) => ({ ...f, steps: steps(f.steps) }));
    const lists = { setUp: steps(p.setUp), dressing: steps(p.dressing) };
    return { ...p, ...lists, events, items: p.items.filter((i) => i.id !== "skin") };
  };

  it("is a breach where no thing of the protocol is the skin: it is prepared nowhere", () => {
    const found = checkProtocol(without(tinyProtocol));
    expect(found.verdict === "breach" && found.breaches[0]).toMatchObject({ rule: "skinPrepared", step: "begin" });
  });

  it("is a breach where the antiseptic comes behind the first line", () => {
    const late = inList(tinyProtocol, "setUp", (steps) => [
      ...drop("prepare")(steps),
      ...steps.filter((s) => s.id === "prepare"),
    ]);
    expect(brokenBy(late)).toContain("skinPrepared");
  });

  it("is a breach where the client leaves a second time and the tattoo is covered no more", () => {
    // Covered once, before the work: each new line opens it again.
    const early = inFlow(
      inList(tinyProtocol, "setUp", (steps) =>
        steps.map((s) => (s.id === "begin" ? { ...s, effects: [...s.effects, { verb: "cover", item: "skin" }] } : s)),
      ),
      "clientLeaves",
      drop("leaveCover"),
    );
    const found = checkProtocol(early);
    const left = found.verdict === "breach" ? found.breaches.find((b) => b.rule === "woundCovered") : undefined;
    expect(left?.moves.flatMap((m) => (m.kind === "event" ? [m.event] : []))).toEqual([
      "clientLeaves",
      "clientReturns",
      "clientLeaves",
    ]);
  });

  it("is a breach where the session closes and nothing covers the tattoo", () => {
    const open = { ...tinyProtocol, dressing: drop("wrap")(tinyProtocol.dressing) };
    const found = checkProtocol(open);
    expect(found.verdict === "breach" && storyOf(checkEn, open, found.breaches[0] as Breach).at(-2)).toBe(
      "You close the session. The tattoo is not covered.",
    );
  });
});

describe("a client who stops early", () => {
  const stopping = (onwards: "continue" | "dressing", effects: Effect[] = []): Protocol => ({
    ...tinyProtocol,
    events: [
      ...tinyProtocol.events,
      {
        event: "stopEarly",
        asksItem: [],
        steps: [{ ...(tinyProtocol.dressing.at(-1) as Step), id: "down", effects }],
        onwards,
      },
    ],
  });
  it("is a breach where the work goes on, whether the last step does something or not", () => {
    const found = checkProtocol(stopping("continue"));
    const [first] = found.verdict === "breach" ? found.breaches : [];
    expect(first && storyOf(checkEn, stopping("continue"), first).slice(-3)).toEqual([
      "The client stops early.",
      'You do "Do sheet." (down), and work goes on.',
      "Rule: When the client stops early, no more is tattooed: the dressing comes next. Source: common practice, no source.",
    ]);
    expect(brokenBy(stopping("continue", [{ verb: "touch", item: "needle" }]))).toContain("stopMeansStop");
  });
  it("is none where the dressing comes next", () => {
    expect(checkProtocol(stopping("dressing")).verdict).toBe("proved");
  });
});

describe("the waste bag", () => {
  // 29 CFR 1910.1030(d)(4)(iii)(B), from memory: closed before it is moved. The order: common practice, no source.
  const cup = tinyProtocol.items.find((i) => i.id === "cup") as Item;
  const bag: Item = { ...cup, id: "bag", role: "container" };
  const out = (item: string): Effect => ({ verb: "discard", item, into: "contaminated", all: false });
  const ending = (...effects: Effect[]): Protocol => ({
    ...inList(tinyProtocol, "breakdown", (steps) => steps.map((s) => (s.id === "waste" ? { ...s, effects } : s))),
    items: [...tinyProtocol.items, bag],
  });
  it("is a breach where it is closed before the last waste, even in one step", () => {
    expect(brokenBy(ending(out("bag"), out("cup")))).toEqual(["bagLast"]);
  });
  it("is none where it is closed last", () => {
    expect(checkProtocol(ending(out("cup"), out("bag"))).verdict).toBe("proved");
  });
});

describe("an accident at work", () => {
  // Common practice, no source: cups and towels that blood met are thrown out, whatever they look like.
  const bloody = (discarded: boolean): Protocol => ({
    ...inList(tinyProtocol, "setUp", (steps) =>
      steps.map((s) => (s.id === "begin" ? { ...s, effects: [...s.effects, { verb: "breakSkin", item: "cup" }] } : s)),
    ),
    resuming: tinyProtocol.resuming.flatMap((s): Step[] => {
      const effects: Effect[] = [{ verb: "discard", item: "cup", into: "contaminated", all: false }];
      return s.id === "hurtSharps" && discarded ? [s, { ...s, id: "hurtCup", effects, atWork: true }] : [s];
    }),
  });
  it("is a breach where a cup that blood met stays, and none where it is thrown out", () => {
    expect(brokenBy(bloody(false))).toEqual(["bloodiedOut"]);
    expect(checkProtocol(bloody(true)).verdict).toBe("proved");
  });
});

describe("a step that may be left out", () => {
  it("is a breach where what follows is unsafe without it", () => {
    const loose = inList(whole, "setUp", (steps) =>
      steps.map((s) => (s.id === "firstHands" ? { ...s, skippable: true } : s)),
    );
    const found = checkProtocol(loose);
    expect(found).toMatchObject({ verdict: "breach" });
    if (found.verdict !== "breach") return;
    expect(found.breaches[0] && storyOf(checkEn, loose, found.breaches[0])).toEqual([
      'You leave out "Do firstHands." (firstHands), which the protocol allows.',
      'Now it asks: "Do firstGloves." (firstGloves).',
      "Rule: Hands are washed or rubbed before gloves go on. Source: WHO 2009 hand hygiene; CDC glove use.",
    ]);
  });
});
