/**
 * The runs of the wet clocks. A run begins when the product is on and ends when the surface is ready, wiped early, found
 * dry or soiled; wet again after that is another run, since split wet periods are never added up.
 */
import type { Summary } from "../log";
import type { SessionFact } from "../session/fact";
import type { WetClock } from "../session/wetClock";
import type { World } from "../session/world";

/** `live` while the clock it follows may still change it. */
export type ClockRun = Summary["wetClocks"][number] & { live: boolean };
export const noRuns: readonly ClockRun[] = [];

type Seen = {
  n: number;
  fact: SessionFact;
  before: World;
  /** `before`, with the time that the fact says was watched. */
  credited: World;
  after: World;
  runs: readonly ClockRun[];
  /** At an undo, the runs as they were before what is taken back; else null. */
  given: readonly ClockRun[] | null;
};

/** @returns the runs after this fact, in the order they began. */
export function clockRuns(seen: Seen): readonly ClockRun[] {
  const { given, runs, fact, after } = seen;
  if (given) {
    const began = new Set(given.map((run) => run.n));
    const lost = runs.filter((run) => !began.has(run.n));
    return [
      ...given.map((run) => (run.live ? withCredit(run, after.clocks[run.surface]) : run)),
      ...lost.map((run): ClockRun => ({ ...run, ended: "takenBack", live: false })),
    ];
  }
  if (!fact.type.startsWith("v1.WetClock") && !runs.some((run) => run.live)) return runs;
  const followed = runs.map((run) => (run.live ? follow(run, seen) : run));
  const surface = beginsAt(fact, seen);
  if (surface === null) return followed;
  const clock = after.clocks[surface];
  if (!clock) return followed;
  const { product, neededMs } = clock;
  const run: ClockRun = {
    n: seen.n,
    surface,
    product,
    neededMs,
    creditedMs: 0,
    ended: "open",
    gaps: 0,
    live: true,
  };
  return [...followed, run];
}

const beginsAt = (fact: SessionFact, { before }: Seen): string | null => {
  if (fact.type === "v1.WetClockStarted") return fact.surface;
  if (fact.type !== "v1.WetClockReapplied") return null;
  return before.clocks[fact.surface]?.state === "counting" ? null : fact.surface;
};

function follow(run: ClockRun, seen: Seen): ClockRun {
  const { fact, before, credited, after } = seen;
  const now = after.clocks[run.surface];
  const reached = withCredit(run, credited.clocks[run.surface]);
  const mine = "surface" in fact && fact.surface === run.surface;
  if (fact.type === "v1.GapSeen" && before.clocks[run.surface]?.state === "counting") {
    return { ...reached, gaps: run.gaps + 1 };
  }
  if (fact.type === "v1.WetClockReady" && mine) return { ...reached, ended: "ready", live: now !== undefined };
  if (beginsAt(fact, seen) === run.surface) {
    return { ...reached, ended: run.ended === "open" ? "restarted" : run.ended, live: false };
  }
  // What soiled it may have taken its clock away, too.
  const isSoiled = fact.type === "v1.EventReported" && fact.item === run.surface;
  if (!now) return { ...reached, ended: isSoiled ? "soiled" : run.ended, live: false };
  if (now.state !== "dry") return reached;
  return { ...reached, ended: (mine && endings[fact.type]) || "soiled", live: false };
}

const endings: Partial<Record<SessionFact["type"], ClockRun["ended"]>> = {
  "v1.WipedEarly": "wipedEarly",
  "v1.WetClockDried": "dried",
  "v1.WetClockLapsed": "lapsed",
};

const withCredit = (run: ClockRun, clock: WetClock | undefined): ClockRun =>
  clock ? { ...run, creditedMs: clock.creditedMs } : run;
