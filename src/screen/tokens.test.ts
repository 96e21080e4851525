/** Contrast computed from the tokens themselves. WCAG 2.2, "relative luminance", "contrast ratio" and 1.4.6 (7:1). */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const tokens = readFileSync("src/screen/tokens.css", "utf8");
const session = readdirSync("src/screen/session")
  .filter((file) => file.endsWith(".css"))
  .map((file) => readFileSync(`src/screen/session/${file}`, "utf8"))
  .join("\n");

type Colours = ReadonlyMap<string, readonly [light: string, dark: string]>;

/** Every `--name: light-dark(#…, #…)` of the block that begins with this selector. */
function coloursOf(selector: string): Colours {
  const block = tokens.slice(tokens.indexOf(`${selector} {`)).split("}")[0] ?? "";
  const found = block.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g);
  return new Map([...found].map(([, name = "", light = "", dark = ""]) => [name, [light, dark]]));
}

const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

const contrast = (a: string, b: string): number => {
  const [less = 0, more = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (more + 0.05) / (less + 0.05);
};

const named = (pattern: RegExp): string[] =>
  [...new Set([...session.matchAll(pattern)].map(([, name]) => name ?? ""))].toSorted();
const onItsOwn = [
  ["on-stencil", "stencil"],
  ["on-alarm", "alarm"],
] as const;
const own = onItsOwn.flat() as readonly string[];
/** As the styles of the session have them. A colour that nothing stands on, such as a line's, is in no rule `background`. */
const texts = named(/(?<![-a-z])color: var\(--([a-z-]+)\)/g).filter((name) => !own.includes(name));
const grounds = named(/background: var\(--([a-z-]+)\)/g).filter((name) => !own.includes(name) && name !== "line");

describe("the computation", () => {
  // WCAG 2.2 understanding 1.4.3: #767676 on white is the lightest grey of 4.5:1; black on white is 21:1.
  it("gives what the standard gives", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(contrast("#767676", "#ffffff")).toBeGreaterThanOrEqual(4.5);
    expect(contrast("#777777", "#ffffff")).toBeLessThan(4.5);
  });
});

describe.each([
  ["light", ":root", 0],
  ["dark", ":root", 1],
  ["high contrast, light", ':root[data-contrast="more"]', 0],
  ["high contrast, dark", ':root[data-contrast="more"]', 1],
] as const)("the theme %s", (_, selector, side) => {
  const colours = coloursOf(selector);
  const colour = (name: string): string => colours.get(name)?.[side] ?? expect.fail(`no colour --${name}`);

  it("names every colour of the usual theme", () => {
    expect([...colours.keys()]).toEqual([...coloursOf(":root").keys()]);
  });

  it("has 7:1 for every text of the session on every ground of the session", () => {
    expect(texts.length * grounds.length).toBeGreaterThan(8);
    const faults = [...texts.flatMap((text) => grounds.map((ground) => [text, ground] as const)), ...onItsOwn].flatMap(
      ([text, ground]) => {
        const ratio = contrast(colour(text), colour(ground));
        return ratio >= 7 ? [] : [`${text} on ${ground}: ${ratio.toFixed(2)}`];
      },
    );
    expect(faults).toEqual([]);
  });

  // WCAG 2.2, 1.4.11: what tells a control or its focus apart has 3:1 with what lies beside it.
  it("has 3:1 for the focus and for shapes that carry a meaning", () => {
    const shapes = ["focus", "soap", "wet", "dry", "alarm", "stencil"];
    const faults = shapes.flatMap((shape) =>
      ["paper", "sheet"]
        .filter((ground) => contrast(colour(shape), colour(ground)) < 3)
        .map((on) => `${shape} on ${on}`),
    );
    expect(faults).toEqual([]);
  });
});
