/** Units that cannot be confused: by the compiler first, at run time second. */
import { describe, expect, it } from "vitest";
import { fixed, ratio } from "../sums/ratio";
import { readStrength, readVolume } from "./reading";
import { add, chlorineIn, strength, toGramsPerLitre } from "./units";

describe("strengths carry their unit", () => {
  it("adds two strengths of one unit", () => {
    expect(add(strength("ppm", ratio(400)), strength("ppm", ratio(100))).amount.equals(500)).toBe(true);
  });

  it("never adds a percent to a ppm", () => {
    // @ts-expect-error the compiler refuses the sum; so does the program, were the compiler ignored
    expect(() => add(strength("percent", ratio(1)), strength("ppm", ratio(1)))).toThrow(TypeError);
  });

  it("never turns alcohol by volume into chlorine", () => {
    // @ts-expect-error alcohol has no available chlorine
    expect(() => toGramsPerLitre(strength("percentVolume", ratio(70)))).toThrow();
  });

  it("takes 1 % as 10 g/L, 10 000 mg/L and 10 000 ppm (WHO cholera guidance)", () => {
    expect(chlorineIn("gramsPerLitre", strength("percent", ratio(1))).amount.equals(10)).toBe(true);
    expect(chlorineIn("ppm", strength("percent", ratio(1))).amount.equals(10_000)).toBe(true);
    expect(chlorineIn("percent", strength("ppm", ratio(1))).amount.equals(ratio(1, 10_000))).toBe(true);
  });

  it("takes 12 degrees chlorum as 3.6 % and 3.5 % as 11.67 degrees (CDC/ICAN App. E note 2)", () => {
    expect(fixed(chlorineIn("percent", strength("degreesChlorum", ratio(12))).amount, 1)).toBe("3.6");
    expect(fixed(chlorineIn("degreesChlorum", strength("percent", ratio(35, 10))).amount, 2)).toBe("11.67");
  });
});

describe("reading what was typed", () => {
  it("reads a bare percent as the bottle means it", () => {
    expect(readStrength("70%", "percentVolume")).toMatchObject({ value: { unit: "percentVolume" } });
    expect(readStrength("70 %", "percentMass")).toMatchObject({ value: { unit: "percentMass" } });
  });

  it("reads mg/L as ppm and degrees chlorum by name", () => {
    expect(readStrength("1000 mg/L", "percent")).toMatchObject({ value: { unit: "ppm" } });
    expect(readStrength("12 degrees chlorum", "percent")).toMatchObject({ value: { unit: "degreesChlorum" } });
  });

  it.each(["5", "5 percentish", "5 constructor", "5 __proto__", "5 mL", "1e9 %", "0x10%"])(
    "refuses the unknown unit in %j",
    (text) => {
      expect(readStrength(text, "percent")).toMatchObject({ ok: false, code: "unknown-unit" });
    },
  );

  it.each(["", "-5%", "NaN%", "Infinity ppm", "1/0 %", "1.2.3%", "½ %"])("refuses the number in %j", (text) => {
    expect(readStrength(text, "percent")).toMatchObject({ ok: false, code: "not-a-number" });
  });

  it("refuses a volume without a unit", () => {
    expect(readVolume("500")).toMatchObject({ ok: false, code: "unknown-unit" });
  });

  it("reads any of the US measures it names exactly", () => {
    expect(readVolume("1 gallon")).toMatchObject({ ok: true });
    const quart = readVolume("1 quart");
    expect(quart.ok && fixed(quart.value.ml, 6)).toBe("946.352946"); // NIST Handbook 44, App. C
  });
});
