/** The bundled protocols walked from end to end: straight, through every event, after an exposure, and with gaps. */
import { describe, expect, it } from "vitest";
import type { Protocol, Step } from "../protocol";
import { applyEffect, disinfected, type Finding, kindsOf, stationAtStart, unready } from "../station";
import { does, effectsIn, flowOf, happening, protocols, straight, withEvents } from "./reading";
import { walk } from "./simpleStation";

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

describe.each(protocols)("$id", ({ protocol: p }) => {
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
