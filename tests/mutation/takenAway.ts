/**
 * The lines that keep what is never allowed from happening, each taken away in a copy of the tree. The property named
 * beside it must then fail; one that stays green proves nothing. Run by `npm run mutate`.
 */
export interface Mutation {
  readonly invariant: string;
  readonly file: string;
  readonly line: string;
  readonly instead: string;
  readonly test: "readyEarly" | "invariants";
}

const early = (file: string, line: string, instead: string): Mutation => ({
  invariant: "never ready early",
  file,
  line,
  instead,
  test: "readyEarly",
});
const other = (invariant: string, file: string, line: string, instead: string): Mutation => ({
  invariant,
  file,
  line,
  instead,
  test: "invariants",
});

export const mutations: readonly Mutation[] = [
  early("src/session/wetClock.ts", 'if (clock.state !== "counting") return clock;', ""),
  early("src/session/wetClock.ts", "clock.creditedMs >= clock.neededMs", "true"),
  early("src/session/wetClock.ts", 'clock.state === "counting" ? { ...clock, state: "doubtful" } : clock', "clock"),
  early("src/session/wetClock.ts", "clock.sinceAppliedMs > clock.reapplyWithinMs", "false"),
  early("src/session/watch.ts", "if (Math.abs(wall - mono) > driftMs)", "if (Math.abs(wall - mono) < 0)"),
  early("src/session/watch.ts", 'if (mono > longestTickMs) return { type: "time.gap", why: "sleep" };', ""),
  early("machines/session/statements.ts", 'if (clock?.state === "ready") return', "if (clock) return"),
  early(
    "src/session/fold.ts",
    '(c.state === "counting" ? reapplied(c) : restarted(c))',
    '({ ...reapplied(c), state: "counting" })',
  ),
  other(
    "never closed pretending",
    "machines/session/conversation.ts",
    '{ guard: "sharpsOpenQuestion", actions: "refuseSharps" },',
    "",
  ),
  other("never closed pretending", "src/session/fold.ts", "...change, counted: null", "...change"),
  other(
    "never gloves over unwashed hands",
    "src/session/station.ts",
    'if (hands === "washed") return { station: { ...station, hands: "glovedClean"',
    'if (hands !== "glovedSoiled") return { station: { ...station, hands: "glovedClean"',
  ),
  other(
    "never gloves over unwashed hands",
    "machines/session/statements.ts",
    '  glovesOverUnwashedHands: "handsNotWashed",',
    "",
  ),
  other("never lost", "src/session/keeper.ts", "if (!written.ok) {", "state = next;\n    if (!written.ok) {"),
  other(
    "never guessed",
    "machines/session/conversation.ts",
    '{ guard: "undoLooksSafer", target: "readBack.undo" },',
    "",
  ),
  other(
    "never guessed",
    "machines/session/conversation.ts",
    '{ guard: "sharpsOpenQuestion", actions: "refuseSharps" },\n          { target: "readBack.close" },',
    '{ guard: "sharpsOpenQuestion", actions: "refuseSharps" },\n          { actions: "keepClose" },',
  ),
  other(
    "never silently refused",
    "machines/session/conversation.ts",
    '"answer.confirm": { actions: "refuseNotNow" },',
    "",
  ),
  other(
    "never silently refused",
    "machines/session/conversation.ts",
    '"session.close": { actions: "refuseAnswerFirst" },',
    "",
  ),
];
