/** The envelope of a fact: its number, when and how it came in, how it is known, and the link to the one before. */
import { z } from "zod";
import type { Way } from "../../machines/session/vocabulary";
import { SessionFact } from "../session/fact";
import { Digest } from "./canonical";
import { Uuidv7 } from "./uuidv7";
import { WallTime } from "./wallTime";

/** Heard with a score, or by one of the ways that need none. */
export const WayIn = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("voice"), confidence: z.number().min(0).max(1) }),
  z.strictObject({ by: z.enum(["pedal", "touch", "keyboard", "scan", "clock", "app"]) }),
]);

/** Measured by the device, scanned from a code, or only said: a record proves no more than this. */
export const Known = z.enum(["measured", "scanned", "said"]);

/** What is the same for all facts of one event. */
export const Stamp = z.strictObject({
  at: WallTime,
  /** Monotonic milliseconds since the page life began. */
  monoMs: z.number().int().min(0),
  /** Which page life the monotonic time belongs to; a reload begins another. */
  life: Uuidv7,
  way: WayIn,
  known: Known,
});

export const LogEntry = z.strictObject({
  /** 1 for the first fact of the session; the header stands for 0. */
  n: z.number().int().min(1),
  fact: SessionFact,
  ...Stamp.shape,
  /** The head before this entry: of the entry n - 1, or of the header. */
  prev: Digest,
});

export type WayIn = z.infer<typeof WayIn>;
export type Known = z.infer<typeof Known>;
export type Stamp = z.infer<typeof Stamp>;
export type LogEntry = z.infer<typeof LogEntry>;

/** How a thing is known by the way it came in: what the app and its clocks see is measured, the rest is somebody's word. */
export function knownBy(way: Way): Known {
  if (way.by === "scan") return "scanned";
  return way.by === "clock" || way.by === "app" ? "measured" : "said";
}
