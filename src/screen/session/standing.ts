/** Where the session stands, as the screen needs it: the one thing to do now, what comes next, what is being asked. Pure. */
import { isOffered } from "../../../machines/session/answers";
import type { SessionState } from "../../../machines/session/decide";
import type { DiscrepancyReason } from "../../session/fact";
import type { Step } from "../../session/protocol";
import { flowHere, groupHere, indexHere, kindsIn, stepHere, stepsHere } from "../../session/world";

export type Now =
  /** `at` counts from 1. */
  | { readonly kind: "steps"; readonly steps: readonly Step[]; readonly next: Step | null; readonly at: number }
  | { readonly kind: "atWork" | "listOver" | "mayClose" | "firstAid" };

export type Question =
  | { readonly kind: "item"; readonly about: string; readonly candidates: readonly string[]; readonly at: number }
  | { readonly kind: "discrepancy"; readonly offered: DiscrepancyReason }
  | { readonly kind: "sharps"; readonly expected: number }
  | { readonly kind: "lot"; readonly item: string; readonly lot: string; readonly expiry: string | null }
  | { readonly kind: "wetness"; readonly surfaces: readonly string[] }
  | { readonly kind: "reason" | "close" | "undo" | "exposureEnd" | "firstAid" | "outOfUse" };

export interface Standing {
  readonly now: Now;
  readonly question: Question | null;
  /** Steps of the list being walked; 0 while at work. */
  readonly count: number;
  /** How many of them lie behind. */
  readonly behind: number;
}

export function standingOf(state: SessionState): Standing {
  const { input, world } = state.context;
  const steps = stepsHere(input, world);
  const behind = Math.min(indexHere(world), steps.length);
  return { now: nowOf(state), question: questionOf(state), count: steps.length, behind };
}

function nowOf({ context: { input, world } }: SessionState): Now {
  if (world.exposure === "firstAid") return { kind: "firstAid" };
  const group = groupHere(input, world);
  const steps = stepsHere(input, world);
  const behind = indexHere(world);
  if (stepHere(input, world)) {
    return { kind: "steps", steps: group, next: steps[behind + group.length] ?? null, at: behind + 1 };
  }
  if (world.phase === "procedure" && flowHere(world) === null) return { kind: "atWork" };
  return { kind: world.phase === "breakdown" || world.exposure === "ended" ? "mayClose" : "listOver" };
}

function questionOf(state: SessionState): Question | null {
  const { world, naming } = state.context;
  if (state.matches({ conversation: "reason" })) return { kind: "reason" };
  if (state.matches({ conversation: "naming" }) && naming) {
    const { about, candidates, at } = naming;
    if (about === "discrepancy") return { kind: "discrepancy", offered: candidates[at] as DiscrepancyReason };
    return { kind: "item", about, candidates, at };
  }
  if (state.matches({ conversation: { readBack: "sharps" } })) return { kind: "sharps", expected: world.sharps.opened };
  if (state.matches({ conversation: { readBack: "close" } })) return { kind: "close" };
  if (state.matches({ conversation: { readBack: "lot" } }) && world.lotShown) return { kind: "lot", ...world.lotShown };
  if (state.matches({ conversation: { readBack: "undo" } })) return { kind: "undo" };
  if (state.matches({ conversation: { readBack: "exposureEnd" } })) return { kind: "exposureEnd" };
  if (world.exposure === "firstAid") return { kind: "firstAid" };
  const waiting = Object.values(world.clocks).filter((c) => c.state === "timeUp" || c.state === "doubtful");
  if (waiting.length > 0) return { kind: "wetness", surfaces: waiting.map((c) => c.surface) };
  return isOffered(state.context) ? { kind: "outOfUse" } : null;
}

/** An item's name in the session's language; a product or an unknown id stands for itself. */
export function nameOf({ context: { input } }: SessionState, id: string): string {
  const item = kindsIn(input)[id];
  return item ? (item.calledAs[input.language] ?? item.calledAs.en) : id;
}
