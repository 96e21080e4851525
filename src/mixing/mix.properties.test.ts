/** What must hold for every mix: conserved, monotone, free of scale, never weaker than asked. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect } from "vitest";
import { ratio } from "../sums/ratio";
import { type Mix, type MixRequest, mix } from "./mix";
import { type ChlorineUnit, type Strength, strength, toGramsPerLitre } from "./units";

function mixed<Kind extends Mix["kind"]>(request: MixRequest & { kind: Kind }): Extract<Mix, { kind: Kind }> {
  const made = mix(request);
  if (!made.ok) throw new Error(made.words);
  return made.value as Extract<Mix, { kind: Kind }>;
}

const anyRatio = (max: number) =>
  fc
    .tuple(fc.integer({ min: 1, max: max * 1000 }), fc.integer({ min: 1, max: 1000 }))
    .map(([n, d]) => ratio(n, d))
    .filter((r) => r.lte(max));
const anyStrength: fc.Arbitrary<Strength<ChlorineUnit>> = fc
  .tuple(fc.constantFrom<ChlorineUnit>("percent", "ppm", "gramsPerLitre", "degreesChlorum"), anyRatio(33))
  .map(([unit, amount]) => strength(unit, amount));
const anyVolume = anyRatio(1_000_000).map((ml) => ({ ml }));
const weakerFirst = fc
  .tuple(anyStrength, anyStrength)
  .map(([a, b]) =>
    toGramsPerLitre(a).amount.lte(toGramsPerLitre(b).amount) ? { target: a, stock: b } : { target: b, stock: a },
  );

describe("for every mix", () => {
  property.prop([weakerFirst, anyVolume])(
    "amount times strength is conserved exactly, both ways",
    ({ stock, target }, volume) => {
      const made = mixed({ kind: "liquid", stock, target, volume });
      const c = toGramsPerLitre(stock).amount;
      const ways = [made.madeUpTo, made.addedTo].filter((way) => way !== null);
      for (const way of ways) {
        expect(way.stockMl.mul(c).equals(way.totalMl.mul(way.resulting.amount))).toBe(true);
        expect(way.stockMl.add(way.waterMl).equals(way.totalMl)).toBe(true);
        expect(way.resulting.amount.equals(toGramsPerLitre(target).amount)).toBe(true);
      }
    },
  );

  property.prop([weakerFirst, anyVolume])(
    "adding to a volume takes more stock than making up to it",
    ({ stock, target }, volume) => {
      const made = mixed({ kind: "liquid", stock, target, volume });
      expect(made.addedTo === null || made.addedTo.stockMl.gt(made.madeUpTo.stockMl)).toBe(true);
    },
  );

  property.prop([weakerFirst, anyVolume, anyRatio(1)])(
    "a stronger stock never needs more of it",
    ({ stock, target }, volume, more) => {
      const stronger = strength("gramsPerLitre", toGramsPerLitre(stock).amount.add(more));
      const less = mixed({ kind: "liquid", stock: stronger, target, volume });
      expect(less.madeUpTo.stockMl.lte(mixed({ kind: "liquid", stock, target, volume }).madeUpTo.stockMl)).toBe(true);
    },
  );

  property.prop([weakerFirst, anyVolume, anyRatio(1)])(
    "a higher target never needs less stock",
    ({ stock, target }, volume, share) => {
      const lower = strength("gramsPerLitre", toGramsPerLitre(target).amount.mul(share));
      const made = mixed({ kind: "liquid", stock, target: lower, volume });
      expect(made.madeUpTo.stockMl.lte(mixed({ kind: "liquid", stock, target, volume }).madeUpTo.stockMl)).toBe(true);
    },
  );

  property.prop([weakerFirst, anyRatio(1000), anyRatio(1000)])(
    "twice the volume is twice the stock, for any factor",
    ({ stock, target }, ml, k) => {
      const one = mixed({ kind: "liquid", stock, target, volume: { ml } });
      const many = mixed({ kind: "liquid", stock, target, volume: { ml: ml.mul(k) } });
      expect(many.madeUpTo.stockMl.equals(one.madeUpTo.stockMl.mul(k))).toBe(true);
      expect(many.partsWater.equals(one.partsWater)).toBe(true);
    },
  );

  property.prop([anyRatio(50), anyStrength, anyVolume])(
    "tablets never come out below the target",
    (gramsPerTablet, target, volume) => {
      const made = mixed({ kind: "tablet", gramsPerTablet, target, volume });
      expect(made.resulting.amount.gte(toGramsPerLitre(target).amount)).toBe(true);
      expect(ratio(made.tablets).sub(made.exactTablets).lt(1)).toBe(true);
    },
  );

  property.prop([weakerFirst, anyVolume, anyRatio(1)])(
    "a target above the stock is always refused",
    ({ stock, target }, volume, more) => {
      const above = strength("gramsPerLitre", toGramsPerLitre(stock).amount.add(more));
      expect(mix({ kind: "liquid", stock: target, target: above, volume })).toMatchObject({ ok: false });
    },
  );
});
