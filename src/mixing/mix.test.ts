/** Published worked examples of chlorine and alcohol dilution. */
import { describe, expect, it, test } from "vitest";
import { fixed, type Ratio, ratio } from "../sums/ratio";
import { type Mix, type MixRequest, mix } from "./mix";
import { readStrength } from "./reading";
import { chlorineIn, strength } from "./units";

const litre = { ml: ratio(1000) };

function decimal(text: string): Ratio {
  const read = readStrength(`${text} %`, "percent");
  if (!read.ok) throw new Error(read.words);
  return read.value.amount;
}

function mixed<Kind extends Mix["kind"]>(request: MixRequest & { kind: Kind }): Extract<Mix, { kind: Kind }> {
  const made = mix(request);
  if (!made.ok) throw new Error(made.words);
  return made.value as Extract<Mix, { kind: Kind }>;
}

const liquid = (stock: string, target: string) =>
  mixed({
    kind: "liquid",
    stock: strength("percent", decimal(stock)),
    target: strength("percent", decimal(target)),
    volume: litre,
  });

const powder = (stock: string, target: string) =>
  mixed({
    kind: "powder",
    stock: strength("percentMass", decimal(stock)),
    target: strength("percent", decimal(target)),
    volume: litre,
  });

describe("liquid bleach, parts water = C/D - 1", () => {
  // Exact figures from the formula of CDC/ICAN App. E; the source in the last column prints the same mix.
  test.each([
    ["5", "0.5", "9.0000", "111.1111", "100.0000", "5000", "100 mL per litre, PMC4925840"],
    ["3.5", "0.5", "6.0000", "166.6667", "142.8571", "5000", "1:6, CDC/ICAN App. E example 1"],
    ["5", "0.1", "49.0000", "20.4082", "20.0000", "1000", "1:49, CDC/ICAN App. E example 3"],
    ["5", "0.05", "99.0000", "10.1010", "10.0000", "500", "1 + 99, WHO Table G.1"],
    ["2.5", "0.05", "49.0000", "20.4082", "20.0000", "500", "2 parts + 98, WHO Table G.1"],
    ["2.5", "0.5", "4.0000", "250.0000", "200.0000", "5000", "formula"],
    ["2.4", "0.5", "3.8000", "263.1579", "208.3333", "5000", "formula, fractional parts"],
    ["6", "0.5", "11.0000", "90.9091", "83.3333", "5000", "formula"],
    ["8", "0.5", "15.0000", "66.6667", "62.5000", "5000", "formula"],
    ["10", "0.5", "19.0000", "52.6316", "50.0000", "5000", "formula"],
    ["12", "0.5", "23.0000", "43.4783", "41.6667", "5000", "formula"],
    ["15", "0.5", "29.0000", "34.4828", "33.3333", "5000", "formula"],
    ["5", "1", "4.0000", "250.0000", "200.0000", "10000", "250 mL in 1 L, cholera outbreak guidelines App. 14"],
    ["15", "1", "14.0000", "71.4286", "66.6667", "10000", "formula; App. 14 prints 70 mL, rounded"],
    ["5", "0.2", "24.0000", "41.6667", "40.0000", "2000", "formula; App. 9 prints 40 mL, rounded"],
    ["5", "2", "1.5000", "666.6667", "400.0000", "20000", "400 mL, App. 9, right only when made up to 1 L"],
  ])("%s %% to %s %%: 1 + %s, %s mL added, %s mL made up, %s ppm (%s)", (stock, target, parts, added, upTo, ppm) => {
    const made = liquid(stock, target);
    expect(fixed(made.partsWater, 4)).toBe(parts);
    expect(fixed(made.addedTo?.stockMl ?? ratio(0), 4)).toBe(added);
    expect(fixed(made.madeUpTo.stockMl, 4)).toBe(upTo);
    expect(fixed(chlorineIn("ppm", made.madeUpTo.resulting).amount, 0)).toBe(ppm);
  });

  it("takes no water when the stock is already at the target", () => {
    const made = liquid("3.5", "3.5");
    expect(made.partsWater.equals(0)).toBe(true);
    expect(made.addedTo).toBeNull();
    expect(fixed(made.madeUpTo.stockMl, 0)).toBe("1000");
    expect(fixed(chlorineIn("ppm", made.madeUpTo.resulting).amount, 0)).toBe("35000");
  });

  it("refuses a target above the stock", () => {
    const request = {
      kind: "liquid",
      stock: strength("percent", ratio(1)),
      target: strength("percent", ratio(2)),
      volume: litre,
    } as const;
    expect(mix(request)).toMatchObject({ ok: false, code: "target-above-stock" });
  });
});

describe("powder, grams per litre = D/C x 1000", () => {
  // Exact figures from CDC/ICAN App. E example 2's formula, 6 decimals.
  test.each([
    ["calcium hypochlorite", "35", "0.5", "14.285714"],
    ["HTH", "70", "0.5", "7.142857"],
    ["HTH", "70", "0.05", "0.714286"],
    ["HTH", "70", "0.2", "2.857143"],
    ["HTH", "70", "2", "28.571429"],
    ["HTH", "70", "1", "14.285714"],
    ["chlorinated lime", "30", "1", "33.333333"],
    ["chlorinated lime", "30", "0.5", "16.666667"],
    ["chloramine", "25", "0.5", "20.000000"],
    ["NaDCC powder", "60", "0.5", "8.333333"],
    ["calcium hypochlorite", "65", "0.5", "7.692308"],
  ])("%s %s %% to %s %%: %s g", (_name, stock, target, grams) => {
    expect(fixed(powder(stock, target).grams, 6)).toBe(grams);
  });

  it("rounds 35 % to 0.5 % as CDC/ICAN prints it, 14.3 g; the IARC atlas's 14.2 g is cut off and too weak", () => {
    const { grams } = powder("35", "0.5");
    expect(fixed(grams, 1)).toBe("14.3");
    expect(ratio(142, 10).lt(grams)).toBe(true);
  });

  // Published, rounded to what a spoon can do; the exact figure stands beside it.
  test.each([
    ["70", "0.5", 7.0, 0.021, "PMC4925840, 2 % low"],
    ["70", "0.05", 0.7, 0.021, "GTFCC App. 9"],
    ["70", "0.2", 3, 0.051, "GTFCC App. 9"],
    ["70", "2", 30, 0.051, "GTFCC App. 9"],
    ["70", "1", 15, 0.051, "cholera outbreak guidelines App. 14"],
    ["30", "1", 33, 0.011, "cholera outbreak guidelines App. 14"],
    ["60", "0.5", 8.5, 0.021, "PMC4925840, implies 58.8 % available chlorine"],
  ])("lies near the published %s %% to %s %% figure of %d g (%d, %s)", (stock, target, published, within) => {
    const exact = powder(stock, target).grams.valueOf();
    expect(Math.abs(published / exact - 1)).toBeLessThan(within);
  });

  it("reads the 8.5 g of PMC4925840 as 58.8 % available chlorine", () => {
    expect(fixed(ratio(5).div(ratio(85, 10)).mul(100), 1)).toBe("58.8");
  });
});

describe("tablets", () => {
  const tablets = (gramsPerTablet: Ratio, target: string) =>
    mixed({ kind: "tablet", gramsPerTablet, target: strength("percent", decimal(target)), volume: litre });

  test.each([
    [ratio(1), "1", 10n, "10000", "10 tablets of 1 g per litre = 1 %, cholera outbreak guidelines App. 14"],
    [ratio(1), "0.5", 5n, "5000", "half of it"],
    [ratio(125, 100), "0.5", 4n, "5000", "PMC4925840: 4 tablets, so 1.25 g each"],
    [ratio(15, 10), "0.5", 4n, "6000", "3.33 rounded up"],
  ])("needs whole tablets, rounded up, and says what results (%#)", (grams, target, count, ppm) => {
    const made = tablets(grams, target);
    expect(made.tablets).toBe(count);
    expect(fixed(chlorineIn("ppm", made.resulting).amount, 0)).toBe(ppm);
  });
});

describe("alcohol by volume, made up to 1 L", () => {
  test.each([
    ["96", "70", "729.1667"],
    ["95", "70", "736.8421"],
    ["99.8", "70", "701.4028"],
    ["91", "70", "769.2308"],
    ["96", "80", "833.3333"],
    ["91", "60", "659.3407"],
    ["95", "60", "631.5789"],
    ["75.5", "60", "794.7020"],
  ])("%s %% to %s %%: %s mL (C1V1 = C2V2, 4 decimals)", (stock, target, ml) => {
    const made = mixed({
      kind: "alcohol",
      stock: strength("percentVolume", decimal(stock)),
      target: strength("percentVolume", decimal(target)),
      volume: litre,
    });
    expect(fixed(made.stockMl, 4)).toBe(ml);
  });

  it("refuses to make 60 % from 40 %", () => {
    const request = {
      kind: "alcohol",
      stock: strength("percentVolume", ratio(40)),
      target: strength("percentVolume", ratio(60)),
      volume: litre,
    } as const;
    expect(mix(request)).toMatchObject({ ok: false, code: "target-above-stock" });
  });

  it("gives no amount of water, because alcohol and water contract", () => {
    const made = mixed({
      kind: "alcohol",
      stock: strength("proof", ratio(190)),
      target: strength("percentVolume", ratio(70)),
      volume: litre,
    });
    expect(Object.keys(made)).not.toContain("waterMl");
    expect(fixed(made.stockMl, 4)).toBe("736.8421"); // US proof is twice the volume percentage
  });
});
