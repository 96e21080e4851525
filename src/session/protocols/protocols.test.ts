/** The bundled protocols keep the rules of the trade. The source of each rule stands beside its test. */
import { describe, expect, it } from "vitest";
import { type Effect, type EventId, eventIds, everyStep, type Protocol, type Step } from "../protocol";
import { asProtocol } from "../readProtocol";
import { applyEffect, disinfected, type Finding, kindsOf, stationAtStart, unready } from "../station";
import { bundledProtocols, protocolById } from "./index";
import { walk } from "./simpleStation";

const wordsIn = (sentence: string): number => sentence.trim().split(/\s+/).length;
const effectsIn = (steps: readonly Step[]): Effect[] => steps.flatMap((s) => s.effects);
const does = (step: Step, ...verbs: Effect["verb"][]): boolean => step.effects.some((e) => verbs.includes(e.verb));
const flowOf = (p: Protocol, event: EventId): Step[] => p.events.find((f) => f.event === event)?.steps ?? [];
const itemsWith = (effects: readonly Effect[], verb: Effect["verb"]): string[] =>
  effects.flatMap((e) => (e.verb === verb && "item" in e ? [e.item] : []));

/** What happens, then the way home. A client who returns has left before. */
const straight = (p: Protocol, ...meanwhile: Step[]): Step[] => [
  ...p.setUp,
  ...meanwhile,
  ...p.dressing,
  ...p.breakdown,
];
const happening = (p: Protocol, event: EventId): Step[] =>
  event === "clientReturns" ? [...flowOf(p, "clientLeaves"), ...flowOf(p, event)] : flowOf(p, event);

/** The rules of the session, over the same steps. Every clock is taken to run its time. */
function findings(p: Protocol, steps: readonly Step[]) {
  const kinds = kindsOf(p.items);
  let station = stationAtStart(p.items, []);
  const found: Finding[] = [];
  for (const effect of effectsIn(steps)) {
    const outcome = applyEffect(station, effect, kinds);
    found.push(...outcome.findings);
    station = effect.verb === "wipe" ? disinfected(outcome.station, effect.item) : outcome.station;
  }
  return { found, unready: unready(station, kinds), hands: station.hands };
}

const protocols = bundledProtocols.map((protocol) => ({ id: protocol.id, protocol }));
const withEvents = protocols.flatMap(({ id, protocol }) => eventIds.map((event) => ({ id, protocol, event })));

describe("the bundled protocols", () => {
  it("are three, found by their ids", () => {
    expect(bundledProtocols.map((p) => p.id)).toEqual(["cartridgeMachine", "autoclavedTubes", "conventionBooth"]);
    expect(protocolById("autoclavedTubes")?.products[0]?.label.contactSec).toBe(180);
    expect(protocolById("nobodysProtocol")).toBeUndefined();
  });

  it("wait differently long, since the time is the label's and no constant", () => {
    // Contact time is per product: 7 U.S.C. 136j, label directions; the figures are invented labels.
    const waits = bundledProtocols.map(
      (p) => p.products.find((s) => s.use === "surfaceDisinfectant")?.label.contactSec,
    );
    expect(waits).toEqual([300, 180, 60]);
  });
});

describe.each(protocols)("$id", ({ protocol: p }) => {
  const steps = everyStep(p).map((s) => s.step);
  const lists = [p.setUp, p.dressing, p.breakdown, p.resuming];

  it("reads back unchanged through the schema, with unique ids and known items", () => {
    expect(asProtocol(JSON.parse(JSON.stringify(p)))).toEqual({ ok: true, protocol: p });
  });

  it("is a real session's worth: 45 to 70 steps beside its event flows, 20 to 40 items", () => {
    const count = lists.flat().length;
    expect(count).toBeGreaterThanOrEqual(45);
    expect(count).toBeLessThanOrEqual(70);
    expect(p.items.length).toBeGreaterThanOrEqual(20);
    expect(p.items.length).toBeLessThanOrEqual(40);
  });

  it("has a flow of one to six steps for everything that can happen", () => {
    expect(p.events.map((f) => f.event)).toEqual(eventIds);
    expect(p.events.filter((f) => f.steps.length < 1 || f.steps.length > 6)).toEqual([]);
    expect(p.events.filter((f) => f.onwards === "dressing").map((f) => f.event)).toEqual(["stopEarly"]);
  });

  it("says at most fourteen words and shows two to six, in both languages", () => {
    const long = steps.filter((s) => wordsIn(s.say.en) > 14 || wordsIn(s.say.es ?? "") > 14);
    const shown = steps.flatMap((s) => [s.show.en, s.show.es ?? ""]).filter((t) => wordsIn(t) < 2 || wordsIn(t) > 6);
    const texts = [...steps.flatMap((s) => [s.say, s.show, ...(s.caution ? [s.caution] : [])]), p.name, p.about];
    const called = p.items.flatMap((i) => [i.name, i.calledAs]);
    expect(long.map((s) => s.id)).toEqual([]);
    expect(shown).toEqual([]);
    expect([...texts, ...called].filter((t) => !t.es)).toEqual([]);
  });

  it("calls no two items by the same word", () => {
    const words = p.items.flatMap((i) => [`en ${i.calledAs.en}`, `es ${i.calledAs.es}`]);
    expect(words.filter((w, i) => words.indexOf(w) !== i)).toEqual([]);
  });

  it("lets nobody leave out hands, gloves, sharps, wetness or a sterile pack", () => {
    // WHO 2009; 29 CFR 1910.1030 (d)(2)(v), (d)(3), (d)(4)(iii)(A); CDC 2008.
    const guarded = steps.filter(
      (s) =>
        s.kind === "count" ||
        does(s, "wash", "rub", "don", "doff", "apply", "wipe", "preClean", "breakSkin") ||
        s.effects.some((e) => e.verb === "discard" && e.into === "sharps") ||
        does(s, "open"),
    );
    expect(guarded.length).toBeGreaterThan(40);
    expect(guarded.filter((s) => s.skippable || s.kind === "check").map((s) => s.id)).toEqual([]);
  });

  it("keeps hands, gloves, sharps and wetness steps of their own, and checks without effects", () => {
    // Design rule of the companion, no outside source: what guards health stands alone.
    const handsOnly = steps.filter((s) => does(s, "wash", "rub", "don", "doff"));
    expect(handsOnly.filter((s) => s.effects.length !== 1).map((s) => s.id)).toEqual([]);
    expect(steps.filter((s) => does(s, "apply") && does(s, "wipe")).map((s) => s.id)).toEqual([]);
    expect(steps.filter((s) => s.kind === "check" && s.effects.length > 0).map((s) => s.id)).toEqual([]);
  });

  it("asks who, how old, agreed, health and skin before the skin is touched, and speaks no health answer", () => {
    // 25 TAC 229.406 (age, document, unhealthy skin); consent and health questions: common practice, no source.
    const order = p.setUp.map((s) => s.id);
    const asked = ["clientIdentityAndAge", "clientConsent", "clientHealth", "clientSkin"].map((id) =>
      order.indexOf(id),
    );
    expect(asked.every((at, i) => at > 0 && at === (asked[0] ?? 0) + i && at < order.indexOf("shave"))).toBe(true);
    expect(p.setUp.filter((s) => s.id.startsWith("client") && s.skippable)).toEqual([]);
    expect(p.setUp.find((s) => s.id === "clientHealth")?.say.en).toContain("silently");
  });

  it("disinfects the surfaces before the client, and again after", () => {
    // NEHA body art model code, 8.1-8.2: before and after each procedure.
    const before = itemsWith(effectsIn(p.setUp), "apply");
    expect(before.length).toBeGreaterThanOrEqual(4);
    expect(itemsWith(effectsIn(p.breakdown), "apply")).toEqual(expect.arrayContaining(before));
    expect(p.setUp.findIndex((s) => does(s, "apply"))).toBeLessThan(p.setUp.findIndex((s) => s.id === "clientConsent"));
  });

  it("covers everything reusable that is touched at work, the companion's own device and microphone too", () => {
    // Barriers are for one client: NEHA body art model code, 8.1; which things: common practice, no source.
    const covers = itemsWith(effectsIn(p.setUp), "cover");
    const begin = effectsIn(p.setUp.filter((s) => s.id === "begin"));
    expect(covers).toEqual(expect.arrayContaining([...itemsWith(begin, "touch"), "screen", "microphone"]));
    expect(p.items.map((i) => i.id)).toContain("screenFilm");
    expect(p.events.find((f) => f.event === "tornBarrier")?.asksItem.toSorted()).toEqual(
      covers.filter((id) => id !== "sprayBottle").toSorted(),
    );
  });

  it("takes every poured bottle away before the skin is broken", () => {
    // Common practice, no source.
    const gone = itemsWith(effectsIn(p.setUp), "takeAway");
    expect(gone).toEqual(expect.arrayContaining(["inkBottles", "antiseptic", "stencilFluid"]));
    const beforeBegin =
      p.setUp.findIndex((s) => s.id === "bottlesAway") < p.setUp.findIndex((s) => does(s, "breakSkin"));
    expect(beforeBegin).toBe(true);
  });

  it("asks for lots of whatever enters skin", () => {
    // NEHA body art model code: lots of sterilised instruments and of inks are recorded.
    const tips = p.items.filter((i) => i.spaulding === "critical" || i.id === "inkBottles");
    expect(tips.length).toBeGreaterThanOrEqual(4);
    expect(tips.filter((i) => !i.hasLot).map((i) => i.id)).toEqual([]);
  });

  it("puts sharps into the sharps container before anything else comes apart, then counts them", () => {
    // 29 CFR 1910.1030 (d)(4)(iii)(A)(1): as soon as feasible.
    expect(p.breakdown[0]?.effects).toEqual([{ verb: "discard", item: "needle", into: "sharps", all: true }]);
    expect(p.breakdown[1]?.kind).toBe("count");
    const wrongStream = steps
      .flatMap((s) => s.effects)
      .filter((e) => e.verb === "discard")
      .filter((e) => (p.items.find((i) => i.id === e.item)?.role === "sharp") !== (e.into === "sharps"));
    expect(wrongStream).toEqual([]);
  });

  it("has clean hands under every pair of gloves, and hand hygiene right after every pair but one that bled", () => {
    // WHO 2009 (before donning, after removing); 29 CFR 1910.1030 (d)(2)(v). A torn glove is looked under first.
    const all = [...lists, ...p.events.map((f) => f.steps)];
    const after = all.flatMap((list) =>
      list.flatMap((s, i) => (does(s, "doff") ? [list[i + 1]].filter((n) => n && !does(n, "wash", "rub")) : [])),
    );
    const before = all.flatMap((list) =>
      list.flatMap((s, i) => (does(s, "don") ? [list[i - 1]].filter((n) => !n || !does(n, "wash", "rub")) : [])),
    );
    expect(after.map((s) => s?.id)).toEqual(["tornGloveLook"]);
    expect(before).toEqual([]);
  });

  it("changes gloves between the last surface wetted and the first wiped", () => {
    // WHO 2009: glove change from soiled to clean; here applied to wiping, common practice, no source.
    const verbs = effectsIn(p.breakdown).map((e) => e.verb);
    const between = verbs.slice(verbs.lastIndexOf("apply") + 1, verbs.indexOf("wipe"));
    expect(between.filter((v) => v !== "touch")).toEqual(["doff", p.id === "conventionBooth" ? "rub" : "wash", "don"]);
  });

  it("throws away every single-use thing that lay at the station, used or not", () => {
    // Common practice, no source. Of the dressing, what did not leave on the client.
    const out = new Set(itemsWith(effectsIn([...p.setUp, ...p.breakdown]), "discard"));
    expect(p.items.filter((i) => i.use === "singleUse" && !out.has(i.id)).map((i) => i.id)).toEqual([]);
  });

  it("disinfects or reprocesses every reusable thing that was touched once skin was broken", () => {
    // CDC 2008 (Spaulding): noncritical cleaned and disinfected, critical sterilised.
    const begin = p.setUp.findIndex((s) => does(s, "breakSkin"));
    const touched = new Set(
      effectsIn([...p.setUp.slice(begin), ...p.dressing, ...p.breakdown]).flatMap((e) => ("item" in e ? [e.item] : [])),
    );
    const ended = effectsIn(p.breakdown);
    const wet = itemsWith(ended, "apply");
    const wiped = itemsWith(ended, "wipe");
    const sterilised = ended.flatMap((e) => (e.verb === "discard" && e.into === "reprocess" ? [e.item] : []));
    const reusable = p.items.filter((i) => i.use === "reusable" && touched.has(i.id));
    expect(wet.toSorted()).toEqual(wiped.toSorted());
    expect(wet.length).toBeGreaterThanOrEqual(8);
    const fate = (i: Protocol["items"][number]) => (i.spaulding === "critical" ? sterilised : wiped);
    expect(reusable.filter((i) => !fate(i).includes(i.id)).map((i) => i.id)).toEqual([]);
  });

  it("dresses with fresh gloves and gives the written sheet before anything comes apart", () => {
    // EN 17169:2020 (client informed in writing, contents list only read); order: common practice, no source.
    expect(p.dressing.slice(0, 3).map((s) => s.effects[0]?.verb)).toEqual([
      "doff",
      p.id === "conventionBooth" ? "rub" : "wash",
      "don",
    ]);
    expect(p.dressing.at(-1)?.say.en).toMatch(/aftercare sheet .* when to seek care/);
    expect(p.dressing.at(-1)?.skippable).toBe(false);
  });

  it("sends the client who is unwell to the emergency number before anything else", () => {
    // Common practice, no source; no treatment is advised.
    expect(flowOf(p, "clientUnwell")[0]?.say.en).toBe("Stop. If in doubt, call the emergency number first.");
  });

  it("resumes after an exposure in order: hands, sharp away, surfaces treated, fresh needle, client told", () => {
    const marks = p.resuming
      .flatMap((s) => s.effects.map((e) => e.verb))
      .filter((v) => v !== "touch" && v !== "preClean");
    const once = marks.filter((v, i) => v !== marks[i - 1]);
    const hygiene = p.id === "conventionBooth" ? "rub" : "wash";
    expect(once).toEqual([
      "doff",
      "wash",
      "don",
      "discard",
      "uncover",
      "apply",
      "doff",
      hygiene,
      "don",
      "bring",
      "wipe",
      "cover",
      "open",
    ]);
    expect(p.resuming.at(-1)?.id).toBe("resumingTold");
  });

  it("does nothing wrong on the straight path and leaves nothing over", () => {
    expect(walk(p, straight(p))).toEqual({ hands: "washed", wrongs: [], leftOver: [], sharpsOut: 0 });
  });

  it("does nothing wrong when an exposure is resumed from", () => {
    expect(walk(p, straight(p, ...p.resuming))).toEqual({ hands: "washed", wrongs: [], leftOver: [], sharpsOut: 0 });
  });

  it("gives the session's own rules nothing to find, whether straight or resumed", () => {
    const nothing = { found: [], unready: [], hands: "washed" };
    expect(findings(p, straight(p))).toEqual(nothing);
    expect(findings(p, straight(p, ...p.resuming))).toEqual(nothing);
  });

  it("goes wrong as soon as any one step with hands, covers, waste or wetness is missing", () => {
    // Shows that the walk above can fail: nothing in the list is there for show. At the booth a rub stands beside each
    // wash at the far sink, so that either alone would pass.
    const path = straight(p);
    const needed = path.filter((s) =>
      does(s, "wash", "don", "cover", "discard", "apply", "wipe", "uncover", "bring", "open"),
    );
    const unnoticed = needed.filter((missing) => {
      const { wrongs, leftOver, sharpsOut, hands } = walk(
        p,
        path.filter((s) => s !== missing),
      );
      return wrongs.length === 0 && leftOver.length === 0 && sharpsOut === 0 && hands === "washed";
    });
    expect(unnoticed.map((s) => s.id)).toEqual(p.id === "conventionBooth" ? ["firstHands", "sinkLast"] : []);
  });
});

describe.each(withEvents)("$id, $event", ({ protocol: p, event }) => {
  it("happens without a wrong and rejoins the straight path", () => {
    const path = straight(p, ...happening(p, event));
    expect(walk(p, path)).toEqual({ hands: "washed", wrongs: [], leftOver: [], sharpsOut: 0 });
    expect(findings(p, path)).toEqual({ found: [], unready: [], hands: "washed" });
  });

  it("happens again after fresh gloves without a wrong", () => {
    const again = [...flowOf(p, "freshGloves"), ...happening(p, event)];
    expect(walk(p, straight(p, ...again)).wrongs).toEqual([]);
  });

  it("leaves gloves that work counted as soiled, or takes them off", () => {
    // 29 CFR 1910.1030 (d)(3)(ix): contaminated gloves are contaminated from the first touch on.
    expect(walk(p, [...p.setUp, ...happening(p, event)]).hands).toMatch(/^(gloved and soiled|washed)$/);
  });
});
