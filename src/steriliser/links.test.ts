/** The way from a failed test to the sessions that used its packs. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { packsUsedIn, recallAfter, type SteriliserHistory, sessionsUsing } from "./links";

describe("from a failed test to the sessions", () => {
  const history: SteriliserHistory = {
    cycles: ["c1", "c2", "c3", "c4", "c5"]
      .map((id, i) => ({ id, steriliserId: "s1", atMs: i }))
      .concat({ id: "x1", steriliserId: "s2", atMs: 2 }),
    tests: [
      { cycleId: "c1", result: "negative" },
      { cycleId: "c3", result: "positive" },
      { cycleId: "c5", result: "negative" },
    ],
    packs: ["c1", "c2", "c3", "c4", "c5", "x1"].map((cycleId) => ({ id: `p-${cycleId}`, cycleId })),
    uses: [
      { sessionId: "monday", packId: "p-c1" },
      { sessionId: "tuesday", packId: "p-c2" },
      { sessionId: "wednesday", packId: "p-c4" },
      { sessionId: "wednesday", packId: "p-c2" },
      { sessionId: "thursday", packId: "p-x1" },
      { sessionId: "friday", packId: "p-c5" },
    ],
  };

  it("lists every session since the last good test, up to the next, of that steriliser alone", () => {
    expect(recallAfter("c3", history)).toEqual({
      suspectCycleIds: ["c2", "c3", "c4"],
      usedPackIds: ["p-c2", "p-c4"],
      unusedPackIds: ["p-c3"],
      sessionIds: ["tuesday", "wednesday"],
      action: "test-again",
    });
  });

  it("calls back after a further positive (CDC 2008)", () => {
    const again = { ...history, tests: [...history.tests, { cycleId: "c4", result: "positive" as const }] };
    expect(recallAfter("c3", again).action).toBe("recall");
  });

  it("puts nothing in doubt for a cycle it does not know", () => {
    expect(recallAfter("c9", history)).toMatchObject({ suspectCycleIds: [], sessionIds: [] });
  });

  const anyUses = fc.array(
    fc.record({ sessionId: fc.constantFrom("a", "b", "c"), packId: fc.constantFrom("p", "q", "r") }),
  );
  property.prop([anyUses, fc.constantFrom("a", "b", "c"), fc.constantFrom("p", "q", "r")])(
    "a session used a pack exactly when the pack was used in the session",
    (uses, session, pack) => {
      expect(sessionsUsing(pack, uses).includes(session)).toBe(packsUsedIn(session, uses).includes(pack));
    },
  );

  const anyHistory = fc.record({
    results: fc.array(fc.constantFrom("negative", "positive", null), { minLength: 1, maxLength: 12 }),
    used: fc.array(fc.nat(11), { maxLength: 20 }),
    failed: fc.nat(11),
  });
  property.prop([anyHistory])(
    "no session between two good tests around the failure is left out, and none beyond is named",
    ({ results, used, failed }) => {
      const at = failed % results.length;
      const cycles = results.map((_, i) => ({ id: `c${i}`, steriliserId: "s", atMs: i }));
      const tests = results
        .flatMap((result, i) => (result === null || i === at ? [] : [{ cycleId: `c${i}`, result }]))
        .concat({ cycleId: `c${at}`, result: "positive" });
      const uses = used.map((i) => ({ sessionId: `session-${i}`, packId: `p${i}` }));
      const recall = recallAfter(`c${at}`, {
        cycles,
        tests,
        packs: cycles.map((c) => ({ id: c.id.replace("c", "p"), cycleId: c.id })),
        uses,
      });
      const inDoubt = (i: number) =>
        i < results.length &&
        !results
          .slice(Math.min(i, at), Math.max(i, at) + 1)
          .some((r, k) => r === "negative" && Math.min(i, at) + k !== at);
      expect([...recall.sessionIds].sort()).toEqual(
        [...new Set(used.filter(inDoubt).map((i) => `session-${i}`))].sort(),
      );
    },
  );
});
