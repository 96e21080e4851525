/**
 * A product of the shelf, or a mix made from one, as the label a session works by. A session counts expiry in whole
 * days; a mix runs out at an hour, so it is given only the last whole day before that hour: never late, possibly early.
 */
import { addDays, showDate } from "../due/calendar";
import { dateAt } from "../due/zone";
import type { MixedProduct } from "../mixing/mixedProduct";
import type { Label } from "../session/protocol";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { contactSFor, type Product, type Stock } from "./product";
import { limitOf } from "./usable";

type LabelCode = "no-contact-time" | "contact-time-too-long";

/** @param use the use named on the product's label; without a contact time for it no session may count on it. */
export function labelForSession(product: Product, stock: Stock, use: string): Answer<Label, LabelCode> {
  const contactS = contactSFor(product, use);
  if (contactS === undefined)
    return refuse("no-contact-time", (say) => say.shelf.noContactTime(quoted(product.name), quoted(use)));
  const limit = limitOf(stock, product);
  return label(product, product.name, contactS, limit && showDate(limit.through));
}

/** @param zone IANA zone of the studio; the mix is refused from the day its use-by falls on, in that zone. */
export function labelForMix(mix: MixedProduct, madeFrom: Product, zone: string): Answer<Label, LabelCode> {
  const lastWholeDay = addDays(dateAt(mix.useByMs, zone), -1);
  return label(madeFrom, mix.name, mix.contactS, showDate(lastWholeDay));
}

function label(product: Product, name: string, contactSec: number, expiry: string | null): Answer<Label, LabelCode> {
  if (contactSec > 3600) return refuse("contact-time-too-long", (say) => say.shelf.tooLongWet(quoted(name)));
  return answer({
    name: { en: name },
    contactSec,
    reapplyWithinSec: product.label?.reapplyWithinS ?? null,
    // One step only where the label itself says so, never on the artist's word.
    oneStep: product.label?.known === "label" && !product.label.cleanFirst,
    afterwards: product.label?.rinseAfter ? "rinse" : "wipe",
    expiry,
  });
}
