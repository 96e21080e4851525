/**
 * What the studio keeps between sessions, by kind of row: its products and stock, what it mixed, its sterilisers with
 * their cycles and packs, its place, which product stands behind an item, and its protocols with their drafts. Checked on the way in and on the way out.
 */
import { z } from "zod";
import { DraftRow, ProtocolRow } from "../drafting/kept";
import { MixedProduct } from "../mixing/mixedProduct";
import { LineValue } from "../places/line";
import { Day, Product, Stock } from "../shelf/product";
import { loadKinds } from "../steriliser/load";
import { SteriliserLogEntry } from "../steriliser/logEntry";
import { Pack } from "../steriliser/packs";
import { TrustedKey } from "../trust/trustedKeys";

const id = z.string().min(1).max(64);
const line = z.string().min(1).max(300);

export const kinds = {
  product: Product,
  /** Sessions begun after `countedAtMs` (epoch ms) draw from the line; before, somebody had counted what they left. */
  stock: z.strictObject({ line: Stock, countedAtMs: z.int() }),
  /** The product it was made from is kept as its label read on that day. */
  mix: z.strictObject({ product: MixedProduct, madeFrom: Product, printed: z.array(line).max(12), spoken: line }),
  steriliser: z.strictObject({
    id,
    name: z.string().min(1).max(80),
    hasVacuum: z.boolean(),
    lastBowieDick: Day.nullable(),
    events: z.array(z.strictObject({ kind: z.enum(["installation", "major repair"]), on: Day })).max(200),
  }),
  /** `statedByMaker` is what the maker allows in a class S cycle; with it the load can be judged again. */
  cycle: z.strictObject({ entry: SteriliserLogEntry, statedByMaker: z.array(z.enum(loadKinds)) }),
  pack: Pack,
  place: z.strictObject({
    placeId: id,
    overrides: z
      .array(
        z.strictObject({
          lineId: z.string().min(1).max(80),
          value: LineValue,
          reason: z.string().min(1).max(200),
          year: z.int().min(1900).max(2100),
        }),
      )
      .max(200),
  }),
  /** A key of another of the studio's devices, whose records are believed; its id is the key. */
  trusted: TrustedKey,
  /** By protocol: item → product on the shelf. */
  assigned: z.strictObject({ items: z.record(z.string().max(40), id), gloves: id.nullable() }),
  /** Proved, by the id of the protocol. */
  protocol: ProtocolRow,
  /** Being edited, or not proved: no session is worked by it. By the id that it will have once proved. */
  protocolDraft: DraftRow,
} as const;

export type Kind = keyof typeof kinds;
export type Of<K extends Kind> = z.infer<(typeof kinds)[K]>;
export const kindNames = Object.keys(kinds) as readonly Kind[];

/** One row put in place of another, or taken away (null). */
export type Change<K extends Kind = Kind> = {
  [Each in K]: { readonly kind: Each; readonly id: string; readonly value: Of<Each> | null };
}[K];

/** There is one place; its row has this id. */
export const onlyId = "chosen";
