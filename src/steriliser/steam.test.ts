/** Saturated steam against the published verification values of IAPWS-IF97, and as a check against air. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it, test } from "vitest";
import { fahrenheitToCelsius } from "./reading";
import { saturationCelsius, saturationKPa } from "./steam";
import { checkSteam } from "./steamCheck";

const kPa = (celsius: number) => saturationKPa(celsius) ?? Number.NaN;

describe("IAPWS-IF97 region 4", () => {
  // Release R7-97(2012), Table 35: saturation pressures, 9 significant digits.
  test.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])("at %d K gives the release's pressure", (kelvin, mpa) => {
    expect(kPa(kelvin - 273.15) / 1000 / mpa).toBeCloseTo(1, 8);
  });

  // Table 36: saturation temperatures, 9 significant digits.
  test.each([
    [0.1, 0.372755919e3],
    [1, 0.453035632e3],
    [10, 0.584149488e3],
  ])("at %d MPa gives the release's temperature", (mpa, kelvin) => {
    expect((saturationCelsius(mpa * 1000) ?? 0) + 273.15).toBeCloseTo(kelvin, 6);
  });

  // The same equations, tabulated: bar absolute (4 decimals), kPa (2), bar gauge at 1.01325 (4), psig (2).
  test.each([
    [100, "1.0142", "101.42", "0.0009", "0.01"],
    [115, "1.6918", "169.18", "0.6785", "9.84"],
    [121, "2.0504", "205.04", "1.0371", "15.04"],
    [121.1, "2.0569", "205.69", "1.0436", "15.14"],
    [124, "2.2517", "225.17", "1.2384", "17.96"],
    [126, "2.3946", "239.46", "1.3813", "20.03"],
    [132, "2.8682", "286.82", "1.8550", "26.90"],
    [134, "3.0420", "304.20", "2.0287", "29.42"],
    [135, "3.1320", "313.20", "2.1188", "30.73"],
    [137, "3.3185", "331.85", "2.3053", "33.44"],
  ])("at %d °C is %s bar absolute", (celsius, barAbs, kPaAbs, barGauge, psig) => {
    const bar = kPa(celsius) / 100;
    expect([
      bar.toFixed(4),
      kPa(celsius).toFixed(2),
      (bar - 1.01325).toFixed(4),
      ((bar - 1.01325) * 14.503774).toFixed(2),
    ]).toEqual([barAbs, kPaAbs, barGauge, psig]);
  });

  test.each([
    [2.05, "120.994"],
    [3.04, "133.978"],
    [3.1, "134.647"],
    [3.3, "136.806"],
  ])("%d bar absolute condenses at %s °C", (bar, celsius) => {
    expect((saturationCelsius(bar * 100) ?? 0).toFixed(3)).toBe(celsius);
  });

  property.prop([fc.double({ min: 0.01, max: 373.9, noNaN: true })])(
    "goes there and back within a microkelvin",
    (celsius) => {
      expect(Math.abs((saturationCelsius(kPa(celsius)) ?? Number.NaN) - celsius)).toBeLessThan(1e-6);
    },
  );

  property.prop([fc.double({ min: 0, max: 373, noNaN: true }), fc.double({ min: 0.001, max: 0.9, noNaN: true })])(
    "rises with temperature",
    (celsius, more) => {
      expect(kPa(celsius + more)).toBeGreaterThan(kPa(celsius));
    },
  );

  it("says nothing outside its range", () => {
    expect([
      saturationKPa(-1),
      saturationKPa(374),
      saturationKPa(Number.NaN),
      saturationCelsius(0),
      saturationCelsius(30_000),
    ]).toEqual([null, null, null, null, null]);
  });
});

describe("air in the chamber", () => {
  const at = (celsius: number, kPaAbs: number | null) => [{ tMs: 0, celsius, kPaAbs }];

  it("is seen when 134 °C stands at well above 3.04 bar", () => {
    expect(checkSteam(at(134, 304.2))).toMatchObject({ finding: "saturated" });
    expect(checkSteam(at(134, 340))).toMatchObject({ finding: "air" });
  });

  it("is not mistaken when gauge and absolute name one state: 1.04 bar gauge is 2.05 absolute", () => {
    expect(checkSteam(at(121, 104 + 101.325)).finding).toBe("saturated");
    expect(checkSteam(at(121, 104)).finding).toBe("superheat"); // gauge taken for absolute, one atmosphere off
  });

  it("is unknown without a pressure", () => {
    expect(checkSteam(at(134, null))).toMatchObject({ finding: "unknown", worstK: null });
    expect(checkSteam([])).toMatchObject({ finding: "unknown" });
  });
});

describe("degrees", () => {
  it("250, 270 and 275 °F are 121.1111, 132.2222 and 135.0000 °C; Table 7 of CDC 2008 rounds the first two", () => {
    expect([250, 270, 275].map((f) => fahrenheitToCelsius(f).toFixed(4))).toEqual(["121.1111", "132.2222", "135.0000"]);
  });
});
