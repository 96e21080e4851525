/** A turnaround in a file: the published schema, and the way from bytes of unknown origin to a problem or one clear line. */

import { z } from "zod";
import type { TurnaroundProblem } from "./problem";

const seconds = z.int().min(0).max(1_000_000);
const id = z.string().min(1).max(80);

const after = z.strictObject({
  task: id.describe("the earlier task"),
  minWaitSec: seconds.default(0).describe("contact or drying time from its end to our start"),
  maxWaitSec: seconds.optional().describe("latest start after its end"),
});

const wet = z.strictObject({
  contactSec: seconds.min(1).describe("how long the surface has to stay wet, from the end of this task"),
  reapplyWithinSec: seconds.min(1).describe("a re-application has to be finished this soon after the last one"),
  reapplySec: seconds.min(1).describe("hands-on time of one re-application"),
});

const task = z.strictObject({
  id,
  label: z.string().min(1).max(200).optional(),
  handsOnSec: seconds,
  cleanliness: z
    .enum(["soiled", "clean", "either"])
    .default("either")
    .describe("what it does to gloves, or needs of them"),
  after: z.array(after).default([]),
  tailSec: seconds.optional().describe("wait after it before the station counts as ready"),
  notBeforeSec: seconds.optional(),
  wet: wet.optional(),
});

const soFar = z.strictObject({
  done: z.array(
    z.strictObject({
      task: id,
      agoSec: seconds.optional().describe("credited seconds since its end; absent: all its waits are over"),
      wettedAgoSec: seconds.optional().describe("seconds since the last re-application"),
    }),
  ),
  inHand: z.strictObject({ task: id, remainingSec: seconds }).optional(),
});

/** One file: one worker's tasks in written order. All times are whole seconds. */
export const rawProblem = z
  .strictObject({
    format: z.literal("gloveside.turnaround.v1"),
    gloveChangeSec: seconds.describe("gloves off, hand hygiene with its dry time, gloves on"),
    gloves: z.enum(["soiled", "clean"]).describe("the gloves at the start"),
    tasks: z.array(task).min(1).max(52),
    soFar: soFar.optional(),
  })
  .describe("A turnaround for one pair of hands. Times are whole seconds.");

export type RawRead =
  | { readonly ok: true; readonly problem: TurnaroundProblem }
  | { readonly ok: false; readonly words: string };

/** Reads the text of a file. Never throws; bad text or a wrong shape is answered in one line. */
export function readRawProblem(text: string): RawRead {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { ok: false, words: "is not JSON" };
  }
  const read = rawProblem.safeParse(json);
  if (!read.success) {
    const issue = read.error.issues[0];
    return { ok: false, words: `${issue?.path.join(".") || "the file"}: ${issue?.message ?? "not a turnaround"}` };
  }
  const { format: _, ...problem } = read.data;
  return { ok: true, problem: withoutAbsent(problem) };
}

/** The JSON Schema (draft 2020-12) of the file, for others to check theirs against. */
export const rawProblemJsonSchema = (): unknown => z.toJSONSchema(rawProblem, { io: "input" });

/** The schema says "may be undefined", the type says "may be absent"; after parsing JSON they are the same thing. */
function withoutAbsent(problem: Omit<z.output<typeof rawProblem>, "format">): TurnaroundProblem {
  return JSON.parse(JSON.stringify(problem)) as TurnaroundProblem;
}
