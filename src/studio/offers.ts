/**
 * What the shelf offers to a session: labels of usable disinfectants and antiseptics, mixes while they last, and lots of
 * usable stock and sterile packs. What is out of date is not offered; what is typed by hand is still refused when opened.
 */
import { type CivilDate, compareDates, parseDate, showDate } from "../due/calendar";
import { dateAt, showWall } from "../due/zone";
import { mixUsable } from "../mixing/useBy";
import type { Label, ProductSlot } from "../session/protocol";
import { soonestFirst } from "../shelf/count";
import { labelForMix, labelForSession } from "../shelf/sessionLabel";
import { isUsable, limitOf } from "../shelf/usable";
import { goodThrough } from "../steriliser/packs";
import type { KeptRecord } from "./record";
import { packStates, packUses } from "./sterile";
import { assignedFor, type Studio } from "./studio";

export type LabelOffer = { readonly id: string; readonly name: string; readonly about: string; readonly label: Label };
export type LotOffer = { readonly id: string; readonly name: string; readonly lot: string; readonly expiry: string };

const kindFor: Readonly<Record<ProductSlot["use"], "disinfectant" | "antiseptic">> = {
  surfaceDisinfectant: "disinfectant",
  skinAntiseptic: "antiseptic",
  handRub: "antiseptic",
};

/** @param nowMs epoch ms. @param zone IANA zone of the studio, which says what day it is. */
export function labelOffers(
  studio: Studio,
  use: ProductSlot["use"],
  nowMs: number,
  zone: string,
): readonly LabelOffer[] {
  const today = dateAt(nowMs, zone);
  const stock = [...studio.stock.values()].map(({ line }) => line);
  const products = [...studio.product.values()].filter(({ kind }) => kind === kindFor[use]);
  const fromStock = products.flatMap((product) => {
    const lines = stock.filter((line) => line.productId === product.id && line.quantity > 0);
    const usable = soonestFirst(
      lines.filter((line) => isUsable(line, product, today)),
      product,
    );
    return usable.flatMap((line) =>
      (product.label?.contactTimes ?? []).flatMap((time): LabelOffer[] => {
        const label = labelForSession(product, line, time.use);
        const about = [time.use, line.lot].filter(Boolean).join(", ");
        return label.ok ? [{ id: `${line.id} ${time.use}`, name: product.name, about, label: label.value }] : [];
      }),
    );
  });
  return use === "surfaceDisinfectant" ? [...mixOffers(studio, nowMs, zone), ...fromStock] : fromStock;
}

/** A session counts in whole days, so a mix is offered up to the day before its use-by falls. */
function mixOffers(studio: Studio, nowMs: number, zone: string): readonly LabelOffer[] {
  return [...studio.mix.entries()].flatMap(([id, { product, madeFrom }]): LabelOffer[] => {
    if (mixUsable(product, nowMs) !== "usable") return [];
    const label = labelForMix(product, madeFrom, zone);
    if (!label.ok || !isStillGood(label.value.expiry, dateAt(nowMs, zone))) return [];
    return [{ id, name: product.name, about: showWall(product.useByMs, zone), label: label.value }];
  });
}

/** Lots of the product that is assigned to an item, what runs out first before the rest. */
export function lotOffers(studio: Studio, protocolId: string, item: string, today: CivilDate): readonly LotOffer[] {
  const assigned = assignedFor(studio, protocolId);
  const productId = Object.hasOwn(assigned.items, item) ? assigned.items[item] : undefined;
  const product = productId === undefined ? undefined : studio.product.get(productId);
  const lines = [...studio.stock.values()].map(({ line }) => line);
  const fromStock = product
    ? soonestFirst(
        lines.filter((line) => line.productId === product.id && line.quantity > 0 && isUsable(line, product, today)),
        product,
      ).flatMap((line): LotOffer[] => {
        const limit = limitOf(line, product);
        const expiry = limit ? showDate(limit.through) : "";
        // A session takes lots of up to forty characters; a cut one would be another lot.
        return line.lot === null || line.lot.length > 40
          ? []
          : [{ id: line.id, name: product.name, lot: line.lot, expiry }];
      })
    : [];
  return fromStock;
}

/** Packs that are sterile today and that no session was given: their number is the lot. Oldest first. */
export function packOffers(studio: Studio, today: CivilDate, records: readonly KeptRecord[] = []): readonly LotOffer[] {
  const used = new Set(packUses(studio, records).map(({ packId }) => packId));
  return packStates(studio, today)
    .filter(({ pack, state }) => state === "sterile" && !used.has(pack.id))
    .map(({ pack }) => {
      const last = goodThrough(pack);
      return { id: pack.id, name: pack.contents, lot: pack.id, expiry: last ? showDate(last) : "" };
    });
}

function isStillGood(expiry: string | null, today: CivilDate): boolean {
  const last = expiry === null ? null : parseDate(expiry);
  return !last?.ok || compareDates(today, last.value) <= 0;
}
