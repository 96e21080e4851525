/** The bundled protocols keep the rules of the trade. The source of each rule stands beside its test. */
import { describe, expect, it } from "vitest";
import { everyStep, type Protocol, type Step } from "../protocol";
import { does, effectsIn, flowOf, itemsWith, protocols } from "./reading";

describe.each(protocols)("$id", ({ protocol: p }) => {
  const steps = everyStep(p).map((s) => s.step);
  const lists = [p.setUp, p.dressing, p.breakdown, p.resuming];

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
    const before = itemsWith(effectsIn(p.setUp), "apply").filter((id) => id !== "skin");
    expect(before.length).toBeGreaterThanOrEqual(4);
    expect(itemsWith(effectsIn(p.breakdown), "apply")).toEqual(expect.arrayContaining(before));
    expect(p.setUp.findIndex((s) => does(s, "apply"))).toBeLessThan(p.setUp.findIndex((s) => s.id === "clientConsent"));
  });

  it("puts antiseptic on the skin before the first line, and covers the tattoo before the client leaves", () => {
    // Common practice, no source.
    const prepared = p.setUp.findIndex((s) => s.effects.some((e) => e.verb === "apply" && e.item === "skin"));
    expect(prepared).toBeGreaterThan(0);
    expect(prepared).toBeLessThan(p.setUp.findIndex((s) => does(s, "breakSkin")));
    const covers = (list: readonly Step[]) => itemsWith(effectsIn(list), "cover").includes("skin");
    expect([p.dressing, flowOf(p, "clientLeaves")].map(covers)).toEqual([true, true]);
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
    const reusable = p.items.filter((i) => i.use === "reusable" && i.role !== "skin" && touched.has(i.id));
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
      "takeAway",
      "open",
    ]);
    expect(p.resuming.at(-1)?.id).toBe("resumingTold");
  });
});
