/** What the prepare screen hands over: everything a session needs to know before its first word. */
import { z } from "zod";
import { addressWords } from "../intent/phrases";
import { Id, Label, Protocol } from "./protocol";

export const Lot = z.strictObject({
  item: Id,
  lot: z.string().min(1).max(40),
  /** Usable through the end of this day; null where the pack states none. */
  expiry: z.iso.date().nullable(),
  known: z.enum(["typed", "scanned"]),
});

export const SessionInput = z.strictObject({
  protocol: Protocol,
  /** The label in use for each product slot of the protocol. */
  labels: z.record(Id, Label),
  lots: z.array(Lot).max(200),
  station: z.string().min(1).max(60),
  artist: z.string().min(1).max(80),
  /** A reference of the studio's choosing, not a name. Missing where it was erased: a record holds a commitment to it. */
  clientReference: z.string().min(1).max(60).optional(),
  address: z.enum(addressWords),
  language: z.enum(["en", "es"]),
  /** IANA time zone, "Europe/Lisbon". */
  zone: z.string().min(1).max(60),
  brisk: z.boolean(),
  /** Items left unready by the session before at this station; they are soiled at the start. */
  carriedOver: z.array(Id).max(120),
});

export type Lot = z.infer<typeof Lot>;
export type SessionInput = z.infer<typeof SessionInput>;
