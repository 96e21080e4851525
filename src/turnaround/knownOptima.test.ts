import { describe, expect, it } from "vitest";
import type { Plan, Task, TurnaroundProblem } from "./problem";
import { solve } from "./solve";

const task = (id: string, handsOnSec: number, more: Partial<Task> = {}): Task => ({
  id,
  handsOnSec,
  cleanliness: "either",
  after: [],
  ...more,
});
const problem = (...tasks: readonly Task[]): TurnaroundProblem => ({ tasks, gloveChangeSec: 60, gloves: "clean" });

/** A plan with its proof; anything else fails the test. */
function proved(of: TurnaroundProblem): Plan {
  const answer = solve(of);
  if (answer.kind !== "planned" || !answer.proved) throw new Error(`not proved: ${JSON.stringify(answer)}`);
  expect(answer.lowerBoundSec).toBe(answer.readySec);
  return answer;
}

describe("known optima", () => {
  // Carlier, "The one-machine sequencing problem", EJOR 11 (1982): 7 jobs; figures from memory, the optimum confirmed by
  // enumerating the 5040 orders. Schrage's rule gives 53; interrupting, which hands do not do, would give 49.
  it("finds 50 for Carlier's seven jobs, where taking the longest follow-up first gives 53", () => {
    const heads = [10, 13, 11, 20, 30, 0, 30];
    const hands = [5, 6, 7, 4, 3, 6, 2];
    const tails = [7, 26, 24, 21, 8, 17, 0];
    const jobs = hands.map((sec, at) =>
      task(`${at + 1}`, sec, { notBeforeSec: heads[at] ?? 0, tailSec: tails[at] ?? 0 }),
    );
    expect(proved(problem(...jobs)).readySec).toBe(50);
  });

  // Jackson (1955): apply one after the other, longest wait first. Best by enumerating all orders.
  it.each([
    { apply: [30, 45, 20, 60], contact: [60, 300, 30, 180], best: 345 },
    { apply: [40, 25, 35, 50, 15], contact: [120, 60, 600, 180, 30], best: 635 },
    { apply: [2, 2, 2, 2], contact: [10, 1, 5, 3], best: 12 },
  ])("applies the longest contact time first: $apply then $contact is ready at $best", ({ apply, contact, best }) => {
    const surfaces = apply.map((sec, at) => task(`${at + 1}`, sec, { tailSec: contact[at] ?? 0 }));
    expect(proved(problem(...surfaces)).readySec).toBe(best);
  });

  // Wipe, wait, wipe on one pair of hands; optima by exhaustive enumeration.
  it.each([
    {
      surfaces: [
        [30, 60, 20],
        [30, 60, 20],
        [30, 60, 20],
      ],
      best: 170,
      oneByOne: 330,
    },
    {
      surfaces: [
        [30, 60, 20],
        [30, 60, 20],
      ],
      best: 140,
      oneByOne: 220,
    },
    {
      surfaces: [
        [20, 300, 30],
        [15, 60, 10],
        [25, 120, 15],
      ],
      best: 350,
      oneByOne: 595,
    },
    {
      surfaces: [
        [2, 4, 1],
        [1, 7, 2],
        [3, 1, 1],
      ],
      best: 11,
      oneByOne: 22,
    },
    {
      surfaces: [
        [3, 2, 2],
        [2, 6, 1],
        [1, 9, 1],
        [2, 1, 2],
      ],
      best: 14,
      oneByOne: 32,
    },
  ])("wets and wipes $surfaces by $best, not $oneByOne", ({ surfaces, best, oneByOne }) => {
    const tasks = surfaces.flatMap(([wet = 0, wait = 0, wipe = 0], at) => [
      task(`wet ${at}`, wet),
      task(`wipe ${at}`, wipe, { after: [{ task: `wet ${at}`, minWaitSec: wait }] }),
    ]);
    expect(proved(problem(...tasks)).readySec).toBe(best);
    expect(surfaces.flat().reduce((sum, sec) => sum + sec, 0)).toBe(oneByOne);
  });

  // K like surfaces, wipe p, wait l, wipe p: ready at Kp + max(Kp, p + l); derived by hand, confirmed exhaustively.
  it.each([
    [3, 1, 3, 7],
    [3, 1, 5, 9],
    [4, 2, 3, 16],
    [2, 1, 10, 13],
    [5, 1, 2, 10],
    [1, 1, 4, 6],
    [4, 1, 3, 8],
    [10, 7, 100, 177],
    [26, 3, 11, 156],
  ])("has %i like surfaces (wipe %i, wait %i, wipe again) ready at %i", (count, wipe, wait, best) => {
    const tasks = Array.from({ length: count }, (_, at) => [
      task(`first ${at}`, wipe),
      task(`second ${at}`, wipe, { after: [{ task: `first ${at}`, minWaitSec: wait }] }),
    ]).flat();
    expect(count * wipe + Math.max(count * wipe, wipe + wait)).toBe(best);
    expect(proved(problem(...tasks)).readySec).toBe(best);
  });

  // A set-up: clean, wipe, wait L, barrier; wash, glove, then ink and needle. Optima by enumeration.
  it.each([
    { wait: 60, barrierFirst: false, best: 250, why: "no idle moment" },
    { wait: 180, barrierFirst: false, best: 310, why: "30 + 40 + 180 + 60, the longest chain" },
    { wait: 600, barrierFirst: false, best: 730, why: "the longest chain again" },
    { wait: 180, barrierFirst: true, best: 380, why: "ink and needle wait for the barrier" },
  ])("sets the station up in $best s when the surface waits $wait s: $why", ({ wait, barrierFirst, best }) => {
    const then = (...ids: readonly string[]) => ids.map((id) => ({ task: id, minWaitSec: 0 }));
    const last = barrierFirst ? then("glove", "barrier") : then("glove");
    const tasks = [
      task("clean", 30),
      task("wipe", 40, { after: then("clean") }),
      task("barrier", 60, { after: [{ task: "wipe", minWaitSec: wait }] }),
      task("wash", 40),
      task("glove", 10, { after: then("wash") }),
      task("ink", 50, { after: last }),
      task("needle", 20, { after: last }),
    ];
    expect(proved(problem(...tasks)).readySec).toBe(best);
  });
});
