/** What stands in a backup, one JSON value a line. Keys of devices are never among them, nor taught voices. */
import { z } from "zod";
import { kinds } from "../studio/kinds";

const anyKind = z.enum(Object.keys(kinds) as [keyof typeof kinds, ...(keyof typeof kinds)[]]);

export const Line = z.discriminatedUnion("kind", [
  /** A record file as an object; it is verified as one before it is believed. */
  z.strictObject({ kind: z.literal("session"), record: z.unknown() }),
  /** A row of the studio; its value passes the schema of its own kind. */
  z.strictObject({
    kind: z.literal("row"),
    row: z.strictObject({ kind: anyKind, id: z.string().min(1).max(80), value: z.unknown() }),
  }),
  /** A protocol that was added, as its file read. */
  z.strictObject({ kind: z.literal("protocol"), text: z.string().max(4_000_000) }),
  /** The last one: how many there were of each. */
  z.strictObject({ kind: z.literal("end"), sessions: z.int().min(0), rows: z.int().min(0), protocols: z.int().min(0) }),
]);
export type Line = z.infer<typeof Line>;
export type StudioRow = Extract<Line, { kind: "row" }>["row"];
export type Counts = { readonly sessions: number; readonly rows: number; readonly protocols: number };
