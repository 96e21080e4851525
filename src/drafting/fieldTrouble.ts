/** Why an edit would leave no protocol: the field as a person would point at it, and a closed set of reasons. */
import type { z } from "zod";
import { Protocol } from "../session/protocol";
import { asProtocol, type ProtocolTrouble } from "../session/readProtocol";

export const fieldTroubles = [
  "empty",
  "tooLong",
  "notAnId",
  "taken",
  "outOfRange",
  "notWhole",
  "notADay",
  /** The last step of a list that must have one, the last item. */
  "lastOne",
  "tooMany",
  /** What the edit is about is not in the protocol. */
  "notThere",
  /** Something that does not disinfect surfaces is applied to one. */
  "notForSurfaces",
  "wrong",
] as const;
export type TroubleCode = (typeof fieldTroubles)[number];

export interface FieldTrouble {
  /** JSON path: "$.setUp[3].say.en". */
  readonly at: string;
  readonly code: TroubleCode;
  /** Most characters, or the bound that was passed. */
  readonly limit: number | null;
}

export type Sound =
  | { readonly ok: true; readonly protocol: Protocol }
  | { readonly ok: false; readonly trouble: FieldTrouble };

export const notThere = (at: string): Sound => ({ ok: false, trouble: { at, code: "notThere", limit: null } });

/** A protocol that every reader would take, or the field that keeps it from being one. */
export function soundProtocol(value: unknown): Sound {
  const read = asProtocol(value);
  if (read.ok) return read;
  const { code, at } = read.trouble;
  if (code === "wrong-shape") {
    const issue = Protocol.safeParse(value).error?.issues[0];
    return { ok: false, trouble: { at, ...(issue ? reasonOf(issue) : { code: "wrong" as const, limit: null }) } };
  }
  return { ok: false, trouble: { at, code: nameTroubles[code] ?? "notThere", limit: null } };
}

const nameTroubles: Partial<Record<ProtocolTrouble["code"], TroubleCode>> = {
  "duplicate-id": "taken",
  "wrong-product": "notForSurfaces",
};

function reasonOf(issue: z.core.$ZodIssue): { code: TroubleCode; limit: number | null } {
  switch (issue.code) {
    case "too_small":
      if (issue.origin === "string") return { code: "empty", limit: null };
      if (issue.origin === "array") return { code: "lastOne", limit: null };
      return { code: "outOfRange", limit: Number(issue.minimum) };
    case "too_big":
      if (issue.origin === "string") return { code: "tooLong", limit: Number(issue.maximum) };
      if (issue.origin === "array") return { code: "tooMany", limit: Number(issue.maximum) };
      return { code: "outOfRange", limit: Number(issue.maximum) };
    case "invalid_format":
      return { code: issue.format === "date" ? "notADay" : "notAnId", limit: null };
    case "invalid_type":
      return { code: issue.expected === "int" || issue.expected === "number" ? "notWhole" : "wrong", limit: null };
    default:
      return { code: "wrong", limit: null };
  }
}
