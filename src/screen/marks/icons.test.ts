import { describe, expect, it } from "vitest";
import { pageIds } from "../pages/page";
import { icons } from "./icons";

describe("the icons", () => {
  it("are one for each page, no two drawn alike", () => {
    for (const page of pageIds) expect(icons[page]).toMatch(/^M/);
    expect(new Set(Object.values(icons)).size).toBe(Object.keys(icons).length);
  });

  it("stay on their square of 24", () => {
    const absolute = Object.values(icons).flatMap((path) =>
      [...path.matchAll(/[MLHV]([\d.]+)(?:[ ,]([\d.]+))?/g)].flatMap(([, x, y]) => [Number(x), Number(y ?? x)]),
    );
    expect(Math.min(...absolute)).toBeGreaterThanOrEqual(1);
    expect(Math.max(...absolute)).toBeLessThanOrEqual(23);
  });
});
