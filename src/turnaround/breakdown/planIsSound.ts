/**
 * May the walk of the breakdown go on in this order? Only among orders that the rules allow, with all that lies behind
 * where it was. The chart asks before it takes a plan, and the verifier asks again.
 */
import { isAdded } from "../../session/addedSteps";
import type { Step } from "../../session/protocol";
import type { SessionInput } from "../../session/sessionInput";
import { stepsHere, type World } from "../../session/world";
import { isAllowedOrder } from "./orders";

export function planIsSound(input: SessionInput, world: World, order: readonly string[]): boolean {
  const { place } = world;
  if (world.phase !== "breakdown" || place?.list !== "breakdown") return false;
  if (world.flows.length > 0 || world.exposure === "firstAid") return false;
  return behindHere(input, world).every((s, at) => s.id === order[at]) && isAllowedOrder(input.protocol, order);
}

/**
 * Steps of the protocol that lie behind, in the order in which they were walked: up to here, and up to the last one
 * passed. What a slip added is no step of the protocol, and keeps its place by itself.
 */
export function behindHere(input: SessionInput, world: World): readonly Step[] {
  const now = stepsHere(input, world);
  const passed = new Set([...world.done, ...world.skipped.map((s) => s.step)]);
  const behind = Math.max(world.place?.index ?? 0, 1 + now.findLastIndex((s) => passed.has(s.id)));
  return now.slice(0, behind).filter((s) => !isAdded(s.id));
}
