/** What the studio's shelf offers to the form: a label to copy, or a lot. Nothing is chosen by itself. */
import { dateAt } from "../../due/zone";
import type { Item, ProductSlot } from "../../session/protocol";
import { labelOffers, lotOffers, packOffers } from "../../studio/offers";
import type { PrepareView } from "../model";
import { Select } from "../sums/parts/Entry";
import { showSeconds } from "../sums/parts/seconds";
import { useRecords, useStudio } from "../sums/useStudio";
import { useShared } from "../useModel";
import { type LabelDraft, type LotDraft, labelDraftOf } from "./draft";
import styles from "./ShelfOffers.module.css";

interface LabelProps {
  readonly slot: ProductSlot;
  readonly zone: string;
  readonly take: (label: LabelDraft) => void;
}

export function LabelOffers({ slot, zone, take }: LabelProps) {
  const { words, language } = useShared();
  const w = words.offers;
  const offers = labelOffers(useStudio(), slot.use, Date.now(), zone);
  if (offers.length === 0) return null;
  return (
    <Select
      label={w.label}
      value=""
      options={[
        ["", w.typed],
        ...offers.map(
          ({ id, name, about, label }) => [id, w.labelOf(name, about, showSeconds(label.contactSec))] as const,
        ),
      ]}
      onChange={(id) => {
        const offer = offers.find((one) => one.id === id);
        if (offer) take(labelDraftOf(offer.label, language));
      }}
    />
  );
}

interface LotProps {
  readonly view: PrepareView;
  readonly protocolId: string;
  readonly item: Item;
  readonly typed: LotDraft;
  readonly take: (lot: LotDraft) => void;
}

export function LotOffers({ view, protocolId, item, typed, take }: LotProps) {
  const { words } = useShared();
  const w = words.offers;
  const studio = useStudio();
  const today = dateAt(Date.now(), view.zone);
  const made = [...studio.cycle.values()].map(({ entry }) => entry.atMs);
  const records = useRecords(studio.pack.size === 0 ? Number.POSITIVE_INFINITY : Math.min(...made));
  // A pack holds what begins sterile. Until it is known which packs were used, none is offered.
  const packs = records?.ok && item.starts.condition === "sterile" ? packOffers(studio, today, records.value) : [];
  const offers = [...lotOffers(studio, protocolId, item.id, today), ...packs];
  if (offers.length === 0) return null;
  return (
    <div className={styles.lot}>
      <Select
        label={w.lot}
        value={offers.find(({ lot }) => lot === typed.lot)?.id ?? ""}
        options={[["", w.none], ...offers.map(({ id, name, lot }) => [id, w.lotOf(name, lot)] as const)]}
        onChange={(id) => {
          const offer = offers.find((one) => one.id === id);
          take(offer ? { lot: offer.lot, expiry: offer.expiry } : { lot: "", expiry: "" });
        }}
      />
    </div>
  );
}
