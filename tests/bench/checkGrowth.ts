/**
 * How the checker grows with a protocol, beside a plain breadth-first search by xstate/graph over the same chart. The
 * search is what a developer would reach for first; it is stopped after so many turns, and how far it came is told.
 * First table: one station, a longer list, both ways. Second: the station grows with the list, the checker alone.
 */
import { spawnSync } from "node:child_process";
import type { AnyStateMachine } from "xstate";
import { getAdjacencyMap } from "xstate/graph";
import { begin, decide, type SessionState } from "../../machines/session/decide";
import { sessionMachine } from "../../machines/session/machine";
import { checkProtocol } from "../../src/check/checkProtocol";
import { sessionOf } from "../../src/check/monitor";
import { longProtocol } from "./longProtocol";

const sizes = [20, 40, 80, 160, 320];
/** Turns of the plain search: one event tried in one state each. */
const limit = 10_000;

/** One size in a process of its own, so that memory is its own. */
const one = process.argv[2] === "--one" ? process.argv.slice(3) : null;
if (one) {
  const [steps, surfaces, how] = [Number(one[0]), Number(one[1]), one[2]];
  console.log(JSON.stringify(how === "check" ? checked(steps, surfaces) : searched(steps, surfaces)));
} else {
  table("one station of 10 items, a longer list", () => 6, true);
  table("the station grows: one surface for every ten steps", (steps) => Math.max(2, Math.round(steps / 10)), false);
}

function table(title: string, surfacesFor: (steps: number) => number, both: boolean): void {
  console.log(title);
  const heading = " steps items | checker: states transitions   cpu s   MB |";
  console.log(both ? `${heading} xstate/graph: states   cpu s   MB` : heading);
  for (const steps of sizes) {
    const surfaces = surfacesFor(steps);
    const ours = run(steps, surfaces, "check") as ReturnType<typeof checked>;
    const cells = [
      `${String(ours.steps).padStart(6)} ${String(ours.items).padStart(5)} |`,
      `${ours.verdict.padEnd(8)} ${String(ours.states).padStart(7)} ${String(ours.transitions).padStart(11)} ${ours.seconds.toFixed(2).padStart(7)} ${String(ours.mb).padStart(4)} |`,
    ];
    console.log([...cells, ...(both ? besides(run(steps, surfaces, "search") as Searched) : [])].join(" "));
  }
}

/** Of this process, so that a shared machine does not show. */
function cpuSeconds(since: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1e6;
}

type Searched = ReturnType<typeof searched>;
function besides(plain: Searched): string[] {
  return [
    `${plain.stopped ? ">" : ""}${plain.states}`.padStart(20),
    `${plain.seconds.toFixed(2).padStart(7)} ${String(plain.mb).padStart(4)}`,
    plain.stopped ? `stopped at step ${plain.furthest} of the set-up's ${plain.ofSetUp}` : "walked whole",
  ];
}

function run(steps: number, surfaces: number, how: string): unknown {
  const made = spawnSync(
    process.execPath,
    ["--import", "tsx", import.meta.filename, "--one", String(steps), String(surfaces), how],
    { encoding: "utf8" },
  );
  if (made.status !== 0) throw new Error(made.stderr);
  return JSON.parse(made.stdout);
}

function checked(steps: number, surfaces: number) {
  const protocol = longProtocol(steps, surfaces);
  const before = process.memoryUsage().rss;
  const begun = process.cpuUsage();
  const found = checkProtocol(protocol);
  return {
    steps: protocol.setUp.length + protocol.dressing.length + protocol.breakdown.length,
    items: protocol.items.length,
    verdict: found.verdict as string,
    states: found.states,
    transitions: found.verdict === "proved" ? found.transitions : 0,
    seconds: cpuSeconds(begun),
    mb: Math.round((process.memoryUsage().rss - before) / 1e6),
  };
}

/** Breadth first over the chart's own states; two are one where the fold says the same but for counts and history. */
function searched(steps: number, surfaces: number) {
  const protocol = longProtocol(steps, surfaces);
  const start = decide(begin(sessionOf(protocol)), { type: "session.begin", today: "2026-01-01" }).next;
  const told = (event: object) => ({ cause: -2, ...event });
  const events = [
    ...["step.done", "step.skip", "step.back", "procedure.finish", "session.close", "exposure.reported"],
    ...["session.resume", "session.pause", "answer.yes", "answer.no", "answer.confirm", "report.undo"],
  ].map((type) => told({ type }));
  const more = [
    told({ type: "reason.given", reason: "ownDecision" }),
    told({ type: "time.witnessed", elapsedMs: 60_000 }),
    ...protocol.events.map((f) => told({ type: "event.reported", event: f.event })),
  ];
  const before = process.memoryUsage().rss;
  const begun = process.cpuUsage();
  const seen = new Set<string>();
  let furthest = 0;
  let stopped = false;
  try {
    getAdjacencyMap(sessionMachine as unknown as AnyStateMachine, {
      fromState: start as never,
      events: [...events, ...more] as never[],
      limit,
      serializeState: (snapshot) => {
        const state = snapshot as unknown as SessionState;
        const { world } = state.context;
        const { count, cause, witnessedMs, deviations, before: undo, beforeCause, gaps, ...rest } = world;
        if (world.phase === "setUp") furthest = Math.max(furthest, world.place?.index ?? 0);
        const text = JSON.stringify([state.value, rest, state.context.naming?.at]);
        seen.add(text);
        return text as never;
      },
    });
  } catch (problem) {
    if (!String(problem).includes("limit")) throw problem;
    stopped = true;
  }
  return {
    states: seen.size,
    seconds: cpuSeconds(begun),
    mb: Math.round((process.memoryUsage().rss - before) / 1e6),
    stopped,
    furthest,
    ofSetUp: protocol.setUp.length,
  };
}
