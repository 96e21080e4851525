/** What a session listens for just now, drawn as often as sessions of the bundled protocols listen for it. */
import { readFileSync } from "node:fs";
import { z } from "zod";
import { type CommandId, commandIds } from "../../../src/intent/phrases";

const commandId = z.enum(commandIds as [CommandId, ...CommandId[]]);
const sets = z
  .array(z.strictObject({ share: z.number(), commands: z.array(commandId) }))
  .parse(JSON.parse(readFileSync(new URL("../../../audio/make/allowed-now.json", import.meta.url), "utf8")));

const always: readonly CommandId[] = ["accident", "again", "options", "hush", "louder", "quieter"];
/** Moments that no rehearsed session stays in long enough to be counted, as machines/session/listenedFor.ts has them. */
const rareSets: readonly (readonly CommandId[])[] = [
  [...always, "reasonNotForClient", "reasonNoStock", "reasonOwnDecision", "no"],
  [...always, "resume", "howLong", "mayITouch", "applied", "wiped", "clientUnwell"],
  [
    ...always,
    ...(["undo", "pause", "howLong", "whatNow", "whatLeft", "mayITouch", "close"] as const),
    ...(["freshGloves", "tornGlove", "tornBarrier", "dropped", "touched", "note"] as const),
  ],
];

/** While something is read back, and kept only on the phrase that is used nowhere else. */
export const readBackSet: readonly CommandId[] = [...always, "confirm", "no"];
/** Reported once and asked about before it is kept: undo, closing, ending after an accident. */
export const readBackCommands: ReadonlySet<CommandId> = new Set(["undo", "close", "stopEarly", "resume"]);

/** A set drawn by its share of a session's time. */
export const anySet = (random: () => number): readonly CommandId[] => drawn(sets, random);

/** One that listens for `command`. */
export function setWith(command: CommandId, random: () => number): readonly CommandId[] {
  const fitting = sets.filter(({ commands }) => commands.includes(command));
  if (fitting.length > 0) return drawn(fitting, random);
  const rare = rareSets.find((set) => set.includes(command));
  if (!rare) throw new Error(`no session listens for ${command}: add its set to ${import.meta.url}`);
  return rare;
}

function drawn(from: typeof sets, random: () => number): readonly CommandId[] {
  let left = random() * from.reduce((sum, { share }) => sum + share, 0);
  const found = from.find(({ share }) => {
    left -= share;
    return left <= 0;
  });
  return (found ?? (from.at(-1) as (typeof sets)[number])).commands;
}
