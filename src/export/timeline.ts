/**
 * A session laid out over time, for a drawing: phases, hands, each surface under its clock, and what stands out. Placed by
 * the wall times of the facts, which never run back here; no contact time is read off it.
 */

import { readWallTime } from "../log/wallTime";
import type { Phase } from "../session/fact";
import { fold } from "../session/fold";
import type { Hands } from "../session/station";
import type { WetClock } from "../session/wetClock";
import { type World, worldAtStart } from "../session/world";
import type { RecordFile } from "./recordFile";

export type Span<T> = { readonly what: T; readonly fromMs: number; readonly toMs: number };
export type MarkKind = "deviation" | "refused" | "event" | "gap" | "exposure";
export type Mark = { readonly kind: MarkKind; readonly n: number; readonly atMs: number };

export type Timeline = {
  readonly fromMs: number;
  readonly toMs: number;
  /** Minutes east of UTC at the beginning, for the figures on the axis. */
  readonly offsetMin: number;
  readonly phases: readonly Span<Phase>[];
  readonly hands: readonly Span<Hands>[];
  readonly surfaces: readonly { readonly surface: string; readonly states: readonly Span<WetClock["state"]>[] }[];
  readonly marks: readonly Mark[];
};

/** Pure; the same record always gives the same drawing. */
export function timelineOf({ header, entries }: Pick<RecordFile, "header" | "entries">): Timeline {
  const { input, rules } = header;
  const phases = spans<Phase>();
  const hands = spans<Hands>();
  const surfaces = new Map<string, ReturnType<typeof spans<WetClock["state"]>>>();
  const marks: Mark[] = [];
  let world = worldAtStart(input, rules);
  const first = readWallTime(entries[0]?.at ?? "");
  const fromMs = first?.epochMs ?? 0;
  let atMs = fromMs;
  for (const { n, fact, at } of entries) {
    atMs = Math.max(atMs, readWallTime(at)?.epochMs ?? atMs);
    world = fold(input, world, fact);
    phases.now(world.phase === "closed" ? null : world.phase, atMs);
    hands.now(world.station.hands, atMs);
    followClocks(surfaces, world, atMs);
    const kind = markOf[fact.type];
    if (kind) marks.push({ kind, n, atMs });
  }
  return {
    fromMs,
    toMs: atMs,
    offsetMin: first?.offsetMin ?? 0,
    phases: phases.until(atMs),
    hands: hands.until(atMs),
    surfaces: [...surfaces].map(([surface, states]) => ({ surface, states: states.until(atMs) })),
    marks,
  };
}

const markOf: Readonly<Record<string, MarkKind | undefined>> = {
  "v1.Deviation": "deviation",
  "v1.Refused": "refused",
  "v1.EventReported": "event",
  "v1.GapSeen": "gap",
  "v1.ExposureReported": "exposure",
};

function followClocks(
  surfaces: Map<string, ReturnType<typeof spans<WetClock["state"]>>>,
  { clocks }: World,
  atMs: number,
): void {
  for (const [surface, clock] of Object.entries(clocks)) {
    const lane = surfaces.get(surface) ?? spans<WetClock["state"]>();
    surfaces.set(surface, lane);
    lane.now(clock.state, atMs);
  }
  for (const [surface, lane] of surfaces) if (!clocks[surface]) lane.now(null, atMs);
}

/** Follows one thing through time; null while there is none. */
function spans<T>() {
  const done: Span<T>[] = [];
  let open: { what: T; fromMs: number } | null = null;
  const close = (toMs: number) => {
    if (open && toMs > open.fromMs) done.push({ ...open, toMs });
  };
  return {
    now(what: T | null, atMs: number): void {
      if (open?.what === what || (open === null && what === null)) return;
      close(atMs);
      open = what === null ? null : { what, fromMs: atMs };
    },
    until(atMs: number): readonly Span<T>[] {
      close(atMs);
      return done;
    },
  };
}

const steps = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440];

/** Full minutes to write along the axis: eight at the most. */
export function ticksOf({ fromMs, toMs, offsetMin }: Pick<Timeline, "fromMs" | "toMs" | "offsetMin">) {
  const minutes = (toMs - fromMs) / 60_000;
  const everyMs = (steps.find((step) => minutes / step <= 7) ?? Math.ceil(minutes / 7)) * 60_000;
  const shiftMs = offsetMin * 60_000;
  const ticks: { atMs: number; clock: string }[] = [];
  for (let at = Math.ceil((fromMs + shiftMs) / everyMs) * everyMs; at - shiftMs <= toMs; at += everyMs) {
    ticks.push({ atMs: at - shiftMs, clock: new Date(at).toISOString().slice(11, 16) });
  }
  return ticks;
}
