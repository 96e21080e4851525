import { test } from "@fast-check/vitest";
import { describe, expect } from "vitest";
import { anyProblem } from "./checks/anyProblem";
import { exhaustive } from "./checks/exhaustive";
import { solve } from "./solve";

/** Longer than any of these turnarounds can sensibly take, so that "none within it" means "none". */
const horizonSec = 140;

function told(problem: Parameters<typeof solve>[0]) {
  const answer = solve(problem);
  if (answer.kind !== "planned") return answer.kind === "impossible" ? undefined : answer;
  const { readySec, gloveChanges, reapplications, order, lowerBoundSec, proved, writtenOrderProved } = answer;
  expect({ lowerBoundSec, proved, writtenOrderProved }).toEqual({
    lowerBoundSec: readySec,
    proved: true,
    writtenOrderProved: true,
  });
  return { readySec, gloveChanges, reapplications, order };
}

describe("the plan is the one exhaustive search finds: ready time, glove changes, re-applications and order", () => {
  test.prop([anyProblem({ most: 9, windows: false })], { numRuns: 500 })("with waits only", (problem) => {
    expect(told(problem)).toEqual(exhaustive(problem, horizonSec));
  });

  test.prop([anyProblem({ most: 6, windows: true })], { numRuns: 150 })("with windows and re-wetting", (problem) => {
    expect(told(problem)).toEqual(exhaustive(problem, horizonSec));
  });
});
