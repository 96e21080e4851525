/** The facts of one product's label, as they are copied from it. */
import type { Label, ProductSlot } from "../../session/protocol";
import { useShared } from "../useModel";
import { type Draft, type Issue, type LabelDraft, labelDraftOf } from "./draft";
import { Choice, Field, Tick } from "./Field";
import { issueOf } from "./issueOf";
import styles from "./LabelFields.module.css";
import { LabelOffers } from "./ShelfOffers";
import type { Change } from "./useDraft";

interface Props {
  readonly slot: ProductSlot;
  readonly draft: Draft;
  readonly change: Change;
  readonly issues: readonly Issue[];
  readonly zone: string;
}

const afterwards: readonly Label["afterwards"][] = ["wipe", "rinse", "airDry"];

export function LabelFields({ slot, draft, change, issues, zone }: Props) {
  const { words } = useShared();
  const w = words.prepare;
  const label = draft.labels[slot.id] ?? labelDraftOf(slot.label, draft.language);
  const set = (part: Partial<LabelDraft>) => change({ labels: { ...draft.labels, [slot.id]: { ...label, ...part } } });
  const at = (field: string) => issueOf(issues, `label.${slot.id}.${field}`);
  return (
    <fieldset className={styles.label}>
      <legend>{w.uses[slot.use]}</legend>
      <LabelOffers slot={slot} zone={zone} take={set} />
      <div className={styles.row}>
        <Field label={w.productName} value={label.name} issue={at("name")} onChange={(name) => set({ name })} />
        <Field
          label={w.expiry}
          type="date"
          value={label.expiry}
          issue={at("expiry")}
          onChange={(expiry) => set({ expiry })}
        />
      </div>
      <div className={styles.times}>
        <Field
          numeric
          label={`${w.contact}, ${w.minutes}`}
          value={label.contactMin}
          issue={at("contact")}
          onChange={(contactMin) => set({ contactMin })}
        />
        <Field
          numeric
          label={`${w.contact}, ${w.seconds}`}
          value={label.contactSec}
          onChange={(contactSec) => set({ contactSec })}
        />
        <Field
          numeric
          label={`${w.reapply}, ${w.minutes}`}
          value={label.reapplyMin}
          issue={at("reapply")}
          hint={w.reapplyHint}
          onChange={(reapplyMin) => set({ reapplyMin })}
        />
        <Field
          numeric
          label={`${w.reapply}, ${w.seconds}`}
          value={label.reapplySec}
          onChange={(reapplySec) => set({ reapplySec })}
        />
      </div>
      <Choice
        label={w.afterwards}
        value={label.afterwards}
        options={afterwards.map((way) => [way, w.after[way]] as const)}
        onChange={(way) => set({ afterwards: way })}
      />
      <Tick label={w.oneStep} checked={label.oneStep} onChange={(oneStep) => set({ oneStep })} />
    </fieldset>
  );
}
