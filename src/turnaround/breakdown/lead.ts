/**
 * What a fresh plan asks for, now that things stand so: another order for the rest, or wetting again what is best wetted
 * now. Pure. A wipe is never put forward here: the walk itself waits until its surface is ready.
 */
import type { SessionInput } from "../../session/sessionInput";
import { owesReapply } from "../../session/wetClock";
import { breakdownOf, stepIn, type World } from "../../session/world";
import type { Plan } from "../problem";
import { orderOf } from "./orderOf";
import { behindHere, planIsSound } from "./planIsSound";

export type Lead =
  | { readonly kind: "order"; readonly order: readonly string[] }
  | { readonly kind: "reapply"; readonly surfaces: readonly string[] };

/** Planned to begin within this is asked for now. */
const nowSec = 3;

/** Null where nothing changes for the artist. */
export function leadFrom(input: SessionInput, world: World, plan: Plan): Lead | null {
  const order = orderOf(input.protocol, behindHere(input, world), plan);
  const isOther = breakdownOf(input, world).some((s, at) => s.id !== order[at]);
  // An order that might yet be bettered would only be changed again.
  if (isOther && plan.writtenOrderProved && planIsSound(input, world, order)) return { kind: "order", order };
  // One at a time: what was asked for is being done.
  if (Object.values(world.clocks).some((c) => c.reapplyPlanned === true && owesReapply(c))) return null;
  const [next] = plan.steps;
  if (next?.kind !== "reapply" || next.startSec > nowSec || world.flows.length > 0 || world.paused) return null;
  const wets = stepIn(input, world, next.task)?.effects ?? [];
  const surfaces = wets.flatMap((e) => {
    const clock = e.verb === "apply" ? world.clocks[e.item] : undefined;
    return clock && owesReapply(clock) && !clock.reapplyPlanned ? [clock.surface] : [];
  });
  return surfaces.length > 0 ? { kind: "reapply", surfaces } : null;
}
