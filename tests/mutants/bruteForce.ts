/**
 * A survivor judged without the checker's slices: every order of what may be told is walked on the whole station at
 * once, breadth first, by the real chart's monitor, until nothing new is found or the limit is reached.
 */

import type { Move } from "../../src/check/graph";
import { Monitor } from "../../src/check/monitor";
import { tellOne } from "../../src/check/telling";
import type { EventId, Protocol, Step } from "../../src/session/protocol";
import { flowHere } from "../../src/session/world";
import { behindHere, planIsSound } from "../../src/turnaround/breakdown/planIsSound";

const slips: readonly EventId[] = ["freshGloves", "tornGlove", "tornBarrier", "dropped", "touched"];

/** What may be told and done now: the checker's own list of moves, written again from the chart's state. */
export function movesAt(m: Monitor, protocol: Protocol): Move[] {
  const { world } = m;
  if (world.phase === "closed") return [];
  const here = m.here();
  const gloved = isGlovedNow(m);
  const flows = protocol.events.filter((f) => f.steps.length > 0).map((f) => f.event);
  const moves: Move[] = [];
  if (here) {
    moves.push({ kind: "done", step: here });
    if (here.skippable && here.effects.length > 0) moves.push({ kind: "skipped", step: here });
    for (const step of otherStepsNext(m, protocol)) moves.push({ kind: "done", step });
  }
  const isBase =
    flowHere(world) === null || (world.flows.length === 1 && world.place === null && world.phase === "procedure");
  const atWork = world.phase === "procedure" && world.place === null && world.exposure === "none";
  if (atWork && world.flows.length === 0) {
    moves.push({ kind: "finish" }, { kind: "exposure" });
    for (const event of flows) {
      const needs = event === "stopEarly" || event === "note" ? true : event === "clientReturns" ? !gloved : gloved;
      if (needs) moves.push({ kind: "event", event });
    }
  } else {
    if (isBase && gloved && here)
      for (const event of slips) if (flows.includes(event)) moves.push({ kind: "event", event });
    if (mayBeHurt(m)) moves.push({ kind: "exposure" });
  }
  if (world.phase === "breakdown" && !here) moves.push({ kind: "close" });
  return moves;
}

/** Anywhere that something is asked for. */
function mayBeHurt(m: Monitor): boolean {
  const { world } = m;
  if (world.phase === "procedure" && (world.place === null || world.placeBefore === null)) return true;
  return m.here() !== null;
}

const isGlovedNow = (m: Monitor): boolean => m.hands().hands === "glovedClean" || m.hands().hands === "glovedSoiled";

/** Steps of the breakdown that a plan may put here instead. */
function otherStepsNext(m: Monitor, protocol: Protocol): Step[] {
  const { input, world } = m;
  if (world.place?.list !== "breakdown" || world.flows.length > 0 || world.exposure !== "none") return [];
  const behind = behindHere(input, world).map((s) => s.id);
  const rest = protocol.breakdown.filter((s) => !behind.includes(s.id));
  return rest.filter(
    (s) =>
      s !== m.here() &&
      planIsSound(input, world, [...behind, s.id, ...rest.filter((other) => other !== s).map((other) => other.id)]),
  );
}

/** What decides how things go on, as one text. */
export function signOf(m: Monitor): string {
  const { world } = m;
  const items = Object.keys(world.station.items).map((id) => Object.values(m.thing(id)).join());
  const { phase, place, flows, exposure, placeBefore, accident } = world;
  const resumed = exposure === "none" ? null : [placeBefore?.list, placeBefore?.index, accident];
  const left = place?.list === "breakdown" ? [world.done, world.skipped.length] : place?.index;
  return JSON.stringify([phase, place?.list, left, flows, exposure, resumed, m.hands(), m.sharps(), items]);
}

export type Harmless = { readonly ok: boolean; readonly words: string };

/** @param most moves tried on the real chart at most */
export function isHarmless(protocol: Protocol, most = 20_000): Harmless {
  const seen = new Set<string>();
  let tried = 0;
  let queue: Monitor[] = [new Monitor(protocol)];
  for (let depth = 0; queue.length > 0; depth += 1) {
    const next: Monitor[] = [];
    for (const m of queue) {
      for (const move of movesAt(m, protocol)) {
        if (tried >= most)
          return { ok: false, words: `nothing found in ${tried} moves, ${depth} deep, but not all walked` };
        tried += 1;
        const after = m.copy();
        const { broken, stuck } = tellOne(after, move);
        if (broken.length > 0) return { ok: false, words: `${broken.join(", ")} after ${depth} moves` };
        if (stuck) continue;
        const sign = signOf(after);
        if (seen.has(sign)) continue;
        seen.add(sign);
        next.push(after);
      }
    }
    queue = next;
  }
  return { ok: true, words: `all of ${seen.size} states walked on the real chart, ${tried} moves` };
}
