import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { bundledProtocols } from "../../session/protocols";
import { straight } from "../../session/protocols/reading";
import { walk } from "../../session/protocols/simpleStation";
import { anyPicks, orderBy } from "../checks/anyOrder";
import { isAllowedOrder, mostMoments, ordersOf } from "./orders";

const anyBundled = fc.constantFrom(...bundledProtocols.map((p) => p.id));
const called = (id: string) => bundledProtocols.find((p) => p.id === id) ?? smallProtocol;
const written = bundledProtocols.map((p) => p.breakdown.map((s) => s.id));

describe("an order that the plan may choose", () => {
  it("may be the written one", () => {
    expect(bundledProtocols.every((p, i) => isAllowedOrder(p, written[i] ?? []))).toBe(true);
  });

  property.prop([anyBundled, anyPicks], { numRuns: 300 })(
    "leaves the station as safe as the written one, as a station written apart from ours sees it",
    (id, picks) => {
      const protocol = called(id);
      const order = orderBy(protocol, picks);
      expect(isAllowedOrder(protocol, order)).toBe(true);
      const steps = order.flatMap((id) => protocol.breakdown.find((s) => s.id === id) ?? []);
      const before = straight(protocol).slice(0, -steps.length);
      expect(walk(protocol, [...before, ...steps])).toEqual({
        hands: "washed",
        wrongs: [],
        leftOver: [],
        sharpsOut: 0,
      });
    },
  );

  property.prop([anyBundled, anyPicks])(
    "keeps sharps first, then the count, and each glove change in one piece",
    (id, picks) => {
      const p = called(id);
      const order = orderBy(p, picks);
      const at = (id: string) => order.indexOf(id);
      expect([at("sharpsFirst"), at("countSharps")]).toEqual([0, 1]);
      for (const gloves of ["wasteGloves", "wipingGloves"]) {
        expect([at(`${gloves}Hands`), at(`${gloves}On`)]).toEqual([at(`${gloves}Off`) + 1, at(`${gloves}Off`) + 2]);
      }
      expect(at("bagOut")).toBeGreaterThan(Math.max(at("wipeFurniture"), at("wipeTools")));
    },
  );

  property.prop([anyBundled, fc.nat(), fc.nat()])(
    "is not one in which a wipe or a glove change has been moved",
    (name, a, b) => {
      const p = called(name);
      const ids = p.breakdown.map((s) => s.id);
      const moved = ids.filter((id) => /^wipe|Gloves|^lastHands/.test(id));
      const id = moved[a % moved.length] as string;
      const rest = ids.filter((other) => other !== id);
      const to = b % ids.length;
      fc.pre(to !== ids.indexOf(id));
      expect(isAllowedOrder(p, [...rest.slice(0, to), id, ...rest.slice(to)])).toBe(false);
    },
  );

  it("has every step once", () => {
    const [first] = written;
    const protocol = bundledProtocols[0] ?? smallProtocol;
    expect(isAllowedOrder(protocol, (first ?? []).slice(1))).toBe(false);
    expect(isAllowedOrder(protocol, [...(first ?? []).slice(0, -1), first?.[0] ?? ""])).toBe(false);
    expect(isAllowedOrder(protocol, [...(first ?? []).slice(0, -1), "polish"])).toBe(false);
  });

  it("is the written one alone where so much is free that it could not all be proved", () => {
    const wet = smallProtocol.breakdown.find((s) => s.id === "wetChair") ?? smallProtocol.breakdown[0];
    const spare = Array.from({ length: 12 }, (_, n) => ({ id: `spare${n}`, base: smallProtocol.items[0] }));
    const protocol = {
      ...smallProtocol,
      items: [...smallProtocol.items, ...spare.flatMap(({ id, base }) => (base ? [{ ...base, id }] : []))],
      breakdown: spare.flatMap(({ id }) =>
        wet ? [{ ...wet, id: `wet${id}`, effects: [{ verb: "apply" as const, item: id, product: "spray" }] }] : [],
      ),
    };
    expect(2 ** 12).toBeGreaterThan(mostMoments);
    const ids = protocol.breakdown.map((s) => s.id);
    expect(isAllowedOrder(protocol, ids)).toBe(true);
    expect(isAllowedOrder(protocol, ids.toReversed())).toBe(false);
    expect(ordersOf(protocol).moments).toBe(13);
  });
});
