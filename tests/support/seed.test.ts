import { fc, test } from "@fast-check/vitest";
import { expect } from "vitest";

const isFixed = process.env.SEED === undefined;

test.prop([fc.nat()])("a property is named with the one seed of every run", () => {
  if (isFixed) expect(expect.getState().currentTestName).toContain("(with seed=20261126)");
});

test("what is drawn without a seed of its own is the same twice", () => {
  if (isFixed) expect(fc.sample(fc.string(), 50)).toEqual(fc.sample(fc.string(), 50));
});
