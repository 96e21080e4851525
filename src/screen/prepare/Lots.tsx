/** Lot and use-by date of each thing whose pack carries one. */
import type { Protocol } from "../../session/protocol";
import type { PrepareView } from "../model";
import { useShared } from "../useModel";
import { type Draft, emptyLot, type Issue, type LotDraft } from "./draft";
import { Field, Section, Tick } from "./Field";
import { issueOf } from "./issueOf";
import { LotCamera } from "./LotCamera";
import styles from "./Lots.module.css";
import { LotOffers } from "./ShelfOffers";
import type { Change } from "./useDraft";

interface Props {
  readonly view: PrepareView;
  readonly protocol: Protocol;
  readonly draft: Draft;
  readonly change: Change;
  readonly issues: readonly Issue[];
}

export function Lots({ view, protocol, draft, change, issues }: Props) {
  const { words } = useShared();
  const w = words.prepare;
  const items = protocol.items.filter((item) => item.hasLot);
  if (items.length === 0) return null;
  const set = (id: string, part: Partial<LotDraft>) =>
    change({ lots: { ...draft.lots, [id]: { ...(draft.lots[id] ?? emptyLot), ...part } } });
  return (
    <Section title={w.lots} hint={w.lotsHint}>
      <LotCamera
        items={items.map((item) => ({ id: item.id, name: item.name[draft.language] ?? item.name.en }))}
        today={view.today}
        take={(id, lot) => set(id, lot)}
      />
      <Tick
        label={w.readsCodes}
        hint={w.readsCodesHint}
        checked={draft.readsCodes}
        onChange={(readsCodes) => change({ readsCodes })}
      />
      {items.map((item) => {
        const typed = draft.lots[item.id] ?? emptyLot;
        return (
          <fieldset key={item.id} className={styles.lot}>
            <legend>{item.name[draft.language] ?? item.name.en}</legend>
            <LotOffers
              view={view}
              protocolId={protocol.id}
              item={item}
              typed={typed}
              take={(lot) => set(item.id, lot)}
            />
            <Field
              label={w.lot}
              value={typed.lot}
              issue={issueOf(issues, `lot.${item.id}.lot`)}
              onChange={(lot) => set(item.id, { lot, known: undefined })}
            />
            <Field
              label={w.expiry}
              type="date"
              value={typed.expiry}
              issue={issueOf(issues, `lot.${item.id}.expiry`)}
              onChange={(expiry) => set(item.id, { expiry, known: undefined })}
            />
          </fieldset>
        );
      })}
    </Section>
  );
}
