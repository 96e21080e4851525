/**
 * Which commands are listened for just now. The fewer, the surer each is heard; but what a person may need to say is
 * always among them, and the accident above all. Keys and touch are not bound by this: there "not now" is answered.
 */
import type { CommandId } from "../../src/intent/phrases";
import { skinsIn } from "../../src/session/skin";
import { flowHere, groupHere, kindsIn, stepHere } from "../../src/session/world";
import { isOffered } from "./answers";
import type { SessionState } from "./decide";
import { lotsHere } from "./lookUp";

const always: readonly CommandId[] = ["accident", "again", "options", "hush", "louder", "quieter"];
const asking: readonly CommandId[] = ["howLong", "whatNow", "whatLeft", "mayITouch"];
const slips: readonly CommandId[] = ["freshGloves", "tornGlove", "tornBarrier", "dropped", "touched", "note"];
const working: readonly CommandId[] = [
  ...slips,
  "newNeedle",
  "parkNeedle",
  "moreInk",
  "photo",
  "machineSwap",
  "takeBreak",
  "clientLeaves",
  "clientReturns",
  "clientUnwell",
  "stopEarly",
  "finish",
];
const reasons: readonly CommandId[] = ["reasonNotForClient", "reasonNoStock", "reasonOwnDecision"];

export function listenedFor(state: SessionState): ReadonlySet<CommandId> {
  return new Set([...always, ...now(state)]);
}

function now(state: SessionState): readonly CommandId[] {
  const { input, world } = state.context;
  if (world.phase === "closed" || world.count === 0) return [];
  if (state.matches({ conversation: "reason" })) return [...reasons, "no"];
  if (state.matches({ conversation: "naming" })) return ["yes", "no", "undo"];
  if (state.matches({ conversation: { readBack: "sharps" } })) return ["confirm", "no", "back", ...wetness(state)];
  if (state.matches({ conversation: "readBack" })) return ["confirm", "no"];
  if (world.exposure === "firstAid") return ["yes", "no", "resume", "stopEarly"];
  if (world.paused) return ["resume", "howLong", "mayITouch", ...wetness(state), "clientUnwell"];

  const step = stepHere(input, world);
  const walking: readonly CommandId[] = step ? ["done", "back", "skip", "problem"] : [];
  const undo: readonly CommandId[] = world.before ? ["undo"] : [];
  const scan: readonly CommandId[] = lotsHere(state.context).length > 0 ? ["scan"] : [];
  const offer: readonly CommandId[] = isOffered(state.context) ? ["yes", "no"] : [];
  const common = [...walking, ...offer, ...undo, "pause" as const, ...asking, ...scan, ...wetness(state)];
  if (world.phase === "procedure") return [...common, ...(flowHere(world) ? slips : working)];
  if (world.phase === "breakdown") return [...common, ...slips, ...(step && world.exposure !== "ended" ? [] : closing)];
  return [...common, ...slips, "stopEarly", ...(world.phase === "setUp" && !step ? (["done"] as const) : [])];
}

const closing: readonly CommandId[] = ["close"];

/** Sprays, wipes and the answers to wetness, while a clock runs or the step is about one. Skin is under none. */
function wetness({ context: { input, world } }: SessionState): readonly CommandId[] {
  const clocks = Object.values(world.clocks);
  const waiting = clocks.some((c) => c.state === "timeUp" || c.state === "doubtful");
  const skins = skinsIn(kindsIn(input));
  const effects = groupHere(input, world).flatMap((s) => s.effects);
  const verbs = effects.flatMap((e) => ("item" in e && skins.includes(e.item) ? [] : [e.verb]));
  const sprays = clocks.length > 0 || verbs.includes("apply") || verbs.includes("wipe");
  const wipes = clocks.length > 0 || verbs.includes("wipe");
  return [
    ...(sprays ? (["applied"] as const) : []),
    ...(wipes ? (["wiped"] as const) : []),
    ...(waiting ? (["yes", "no"] as const) : []),
  ];
}
