/**
 * From pack to session and back. When a biological test fails, every pack since the last good test is in doubt, and
 * so is every session that used one. Plain data in, plain data out: the records stay where they are.
 */

export type PackUse = { readonly sessionId: string; readonly packId: string };
export type CycleRef = { readonly id: string; readonly steriliserId: string; readonly atMs: number };
export type PackRef = { readonly id: string; readonly cycleId: string };
/** A biological test runs in a cycle; `positive` means spores survived: the test failed. */
export type BiologicalTest = { readonly cycleId: string; readonly result: "negative" | "positive" };

export function sessionsUsing(packId: string, uses: readonly PackUse[]): readonly string[] {
  return unique(uses.filter((use) => use.packId === packId).map((use) => use.sessionId));
}

export function packsUsedIn(sessionId: string, uses: readonly PackUse[]): readonly string[] {
  return unique(uses.filter((use) => use.sessionId === sessionId).map((use) => use.packId));
}

export type Recall = {
  readonly suspectCycleIds: readonly string[];
  /** Packs of those cycles that no session used: keep them out of use. */
  readonly unusedPackIds: readonly string[];
  readonly usedPackIds: readonly string[];
  /** Sessions that used any of them, in the order of use. */
  readonly sessionIds: readonly string[];
  readonly action: "test-again" | "recall";
};

export type SteriliserHistory = {
  readonly cycles: readonly CycleRef[];
  readonly tests: readonly BiologicalTest[];
  readonly packs: readonly PackRef[];
  readonly uses: readonly PackUse[];
};

/**
 * What a failed test in `failedCycleId` puts in doubt: all cycles of that steriliser after the last negative test
 * before it, up to the next negative test after it. Unknown cycles put nothing in doubt.
 * After one positive, items other than implants need not be called back unless steriliser or procedure was at fault;
 * after a further positive they are treated as not sterile and called back (CDC 2008, sterilisation monitoring).
 */
export function recallAfter(failedCycleId: string, history: SteriliserHistory): Recall {
  const failed = history.cycles.find((cycle) => cycle.id === failedCycleId);
  const ofSame = history.cycles
    .filter((cycle) => cycle.steriliserId === failed?.steriliserId)
    .sort((a, b) => a.atMs - b.atMs);
  const at = ofSame.findIndex((cycle) => cycle.id === failedCycleId);
  const resultOf = (cycleId: string) => {
    const results = history.tests.filter((test) => test.cycleId === cycleId).map((test) => test.result);
    return results.includes("positive") ? "positive" : results[0];
  };
  let first = at;
  while (first > 0 && resultOf(ofSame[first - 1]?.id ?? "") !== "negative") first -= 1;
  let end = at + 1;
  while (end < ofSame.length && resultOf(ofSame[end]?.id ?? "") !== "negative") end += 1;
  const suspectCycleIds = at < 0 ? [] : ofSame.slice(first, end).map((cycle) => cycle.id);
  const positives = suspectCycleIds.filter((id) => resultOf(id) === "positive").length;
  const suspect = new Set(suspectCycleIds);
  const packIds = history.packs.filter((pack) => suspect.has(pack.cycleId)).map((pack) => pack.id);
  const inDoubt = new Set(packIds);
  const used = new Set(history.uses.map((use) => use.packId));
  return {
    suspectCycleIds,
    unusedPackIds: packIds.filter((id) => !used.has(id)),
    usedPackIds: packIds.filter((id) => used.has(id)),
    sessionIds: unique(history.uses.filter((use) => inDoubt.has(use.packId)).map((use) => use.sessionId)),
    action: positives > 1 ? "recall" : "test-again",
  };
}

function unique(ids: readonly string[]): readonly string[] {
  return [...new Set(ids)];
}
