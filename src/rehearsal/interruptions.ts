/** How often a breakdown may be interrupted by speech: our own bar, for a session with eight surfaces. */
import type { Protocol } from "../session/protocol";

/** Fewer than this. */
export const breakdownBar = 12;

export const wettedIn = (protocol: Protocol): number =>
  new Set(
    protocol.breakdown.flatMap((step) =>
      step.effects.flatMap((effect) => (effect.verb === "apply" ? [effect.item] : [])),
    ),
  ).size;
