import { expect, test } from "vitest";
import { tellFailure } from "./failures";

const where = { file: "src/a.test.ts", test: "a thing > is short (with seed=7)" };

test("a failure names file and test, then why, with the cause of a property's", () => {
  const cause = { name: "Caused by: AssertionError", message: "expected 3 to be less than 3" };
  const message = 'Property failed after 3 tests\n{ seed: 7, path: "2:2" }\nCounterexample: [[0,0,0]]';
  expect(tellFailure({ ...where, errors: [{ name: "Error", message, cause }] })).toBe(`\
FAILED src/a.test.ts > a thing > is short (with seed=7)
    Error: Property failed after 3 tests
    { seed: 7, path: "2:2" }
    Counterexample: [[0,0,0]]
    because of AssertionError: expected 3 to be less than 3`);
});

test("a long counterexample is cut, and says so, with the cause still told", () => {
  const message = `Counterexample: [${"0,".repeat(5_000)}0]`;
  const told = tellFailure({ ...where, errors: [{ message, cause: new Error("too long"), diff: "- 1\n+ 2" }] });
  expect(told.length).toBeLessThan(1_500);
  expect(told).toContain("characters more)");
  expect(told).toContain("    - 1\n    + 2\n    because of Error: too long");
});

test("a difference loses its colours", () => {
  const red = `${String.fromCharCode(27)}[31m`;
  expect(tellFailure({ ...where, errors: [{ message: "no", diff: `${red}- 1` }] })).toMatch(/\n {4}- 1$/);
});
