/** Recipes as published, held against their own claim: the right ones, the roundings and the known errors. */
import { describe, expect, it, test } from "vitest";
import { fixed, type Ratio, ratio } from "../sums/ratio";
import { massFromVolume, volumeFromMass } from "./alcohol";
import { readVolume } from "./reading";
import { against, strengthAddedTo, strengthMadeUpTo, strengthOfPowder } from "./recipe";
import { chlorineIn, strength } from "./units";

const percent = (hundredths: number) => strength("percent", ratio(hundredths, 100));
const ppm = (made: ReturnType<typeof strengthAddedTo>, places = 1) => fixed(chlorineIn("ppm", made).amount, places);
const ml = (amount: Ratio | number) => ({ ml: typeof amount === "number" ? ratio(amount) : amount });

function measure(text: string) {
  const read = readVolume(text);
  if (!read.ok) throw new Error(read.words);
  return read.value;
}

describe("what 1:10 means differs by source", () => {
  // 1 + 9 is "1 part in 10" (CDC); 1 + 10 is "one part to 10 parts water" (Oregon OHLA). Rounded to 0.1 ppm.
  test.each([
    [525, "5250.0", "4772.7", "1050.0", "525.0", "519.8", "105.0"],
    [600, "6000.0", "5454.5", "1200.0", "600.0", "594.1", "120.0"],
    [615, "6150.0", "5590.9", "1230.0", "615.0", "608.9", "123.0"],
    [825, "8250.0", "7500.0", "1650.0", "825.0", "816.8", "165.0"],
  ])("stock %d/100 %%", (stock, ...expected) => {
    const waters = [9, 10, 49, 99, 100, 499];
    expect(waters.map((water) => ppm(strengthAddedTo(percent(stock), ml(1), ml(water))))).toEqual(expected);
  });

  it("agrees with CDC's ranges for 5.25 to 6.15 % stock: 5250-6150, 525-615 and over 100 ppm", () => {
    const range = (water: number) =>
      [525, 615].map((stock) => ppm(strengthAddedTo(percent(stock), ml(1), ml(water)), 0));
    expect(range(9)).toEqual(["5250", "6150"]);
    expect(range(99)).toEqual(["525", "615"]);
    expect(range(499)).toEqual(["105", "123"]);
  });

  it("takes either reading of 1:10 as published, and says which is the weaker", () => {
    const published = ["5250.0", "4772.7"];
    const total = strengthMadeUpTo(percent(525), ml(1), ml(10));
    const beside = strengthAddedTo(percent(525), ml(1), ml(10));
    expect(published).toContain(ppm(total));
    expect(published).toContain(ppm(beside));
    expect(against(total, beside).meets).toBe(false);
  });
});

describe("published errors, caught", () => {
  it("2 spoons of 3.5 % liquid bleach in 20 L is not 0.5 % but 50.7 ppm, a hundred times too weak (KnowledgePoint spoon recipe)", () => {
    const spoons = ml(ratio(29)); // two of 14.5 mL
    const made = strengthAddedTo(percent(350), spoons, ml(20_000));
    expect(ppm(made)).toBe("50.7");
    expect(against(percent(50), made).meets).toBe(false);
    expect(against(percent(50), made).share.valueOf()).toBeLessThan(0.011);
  });

  it("1 L of 0.5 % in 10 L of water is not 0.05 % but 454.5 ppm; 1 + 9 is right (same page)", () => {
    const wrong = strengthAddedTo(percent(50), ml(1000), ml(10_000));
    expect(ppm(wrong)).toBe("454.5");
    expect(against(percent(5), wrong).meets).toBe(false);
    expect(against(percent(5), strengthAddedTo(percent(50), ml(1000), ml(9000)))).toMatchObject({ meets: true });
  });

  test.each([
    ["63:37 of 95 %", 9500, 63, "59.85"],
    ["79:21 of 75.5 %", 7550, 79, "59.65"],
  ])("the forum recipe %s for 60 %% alcohol rounds down to %s", (_name, stock, parts, made) => {
    const volumePercent = ratio(stock, 100).mul(parts).div(100);
    expect(volumePercent.lt(60)).toBe(true);
    expect(Math.abs(volumePercent.valueOf() - Number(made))).toBeLessThanOrEqual(0.0051);
  });

  it("66:34 of 91 % for 60 % alcohol rounds up, to 60.06 %", () => {
    expect(fixed(ratio(91).mul(66).div(100), 2)).toBe("60.06");
  });
});

describe("recipes in spoons, cups and quarts", () => {
  it("10 level spoons (14.5 g) of 70 % HTH in 20 L make 5075 ppm, one spoon 507.5 (UNICEF via KnowledgePoint)", () => {
    expect(ppm(strengthOfPowder(ratio(70), ratio(145), ml(20_000)))).toBe("5075.0");
    expect(ppm(strengthOfPowder(ratio(70), ratio(145, 10), ml(20_000)))).toBe("507.5");
  });

  it("10 mL made up to 946 mL is 555.0 ppm and 94 mL 5216.7, of 5.25 % (WAC 296-823-14055)", () => {
    expect(ppm(strengthMadeUpTo(percent(525), ml(10), ml(946)))).toBe("555.0");
    expect(ppm(strengthMadeUpTo(percent(525), ml(94), ml(946)))).toBe("5216.7");
  });

  it("5 tablespoons are not a third of a cup per gallon: 1005.7 against 1071.4 ppm of 5.25 % (CDC CS316270-A)", () => {
    const perGallon = (stock: { ml: Ratio }) => ppm(strengthAddedTo(percent(525), stock, measure("1 gallon")));
    expect(perGallon(measure("5 tbsp"))).toBe("1005.7");
    expect(perGallon(measure("1/3 cup"))).toBe("1071.4");
    expect(ppm(strengthAddedTo(percent(525), measure("4 tsp"), measure("1 quart")))).toBe("1071.4");
    expect(fixed(measure("5 tbsp").ml, 1)).toBe("73.9");
    expect(fixed(measure("1/3 cup").ml, 1)).toBe("78.9");
  });
});

describe("the WHO handrub formulations", () => {
  // WHO Guide to Local Production (amounts from memory): per 10 L.
  it("Formulation I is nominally 80 % ethanol", () => {
    expect(fixed(ratio(8333).mul(96).div(10_000), 4)).toBe("79.9968");
    expect(fixed(ratio(417).mul(3).div(10_000), 4)).toBe("0.1251");
    expect(fixed(ratio(145).mul(100).div(10_000), 2)).toBe("1.45");
    expect(fixed(ratio(145).mul(98).div(10_000), 3)).toBe("1.421");
  });

  it("Formulation II is nominally 75 % isopropanol", () => {
    expect(fixed(ratio(7515).mul(998, 10).div(10_000), 4)).toBe("74.9997");
  });
});

describe("alcohol by mass and by volume", () => {
  // Densities at 20 °C in g/mL, from memory: ethanol 0.78924, 70 % w/w 0.86766, 70 % v/v 0.88551.
  const ethanol = ratio(78_924, 100_000);

  it("70 % by mass is 76.96 % by volume at 20 °C; the source's 76.8 % is for 15 °C", () => {
    const made = volumeFromMass(ratio(70), { ethanol, mixture: ratio(86_766, 100_000) });
    expect(fixed(made, 2)).toBe("76.96");
    expect(Math.min(Math.abs(made.valueOf() - 76.96), Math.abs(made.valueOf() - 76.8))).toBeLessThan(0.01);
  });

  it("does not reproduce the published 80.5 % at 25 °C", () => {
    const made = volumeFromMass(ratio(70), { ethanol, mixture: ratio(86_766, 100_000) });
    expect(Math.abs(made.valueOf() - 80.5)).toBeGreaterThan(3);
  });

  it("70 % by volume is 62.39 % by mass", () => {
    expect(fixed(massFromVolume(ratio(70), { ethanol, mixture: ratio(88_551, 100_000) }), 2)).toBe("62.39");
  });
});
