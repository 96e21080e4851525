/** How much stock makes the strength asked for: read as it is typed, with its cautions always in sight. */
import { useState } from "react";
import { cautionsFor, neverMix } from "../../../mixing/cautions";
import { type MixForm, type MixView, mixView, type StockKind, stockKinds } from "../../../mixing/view";
import { type Answer, wordsIn } from "../../../sums/answer";
import type { SumPhrases } from "../../../sums/phrases";
import type { PageProps } from "../../pages/screens";
import { Choice, Section } from "../../prepare/Field";
import fieldStyles from "../../prepare/Prepare.module.css";
import { Entry, Select } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useNowMs, useStudio } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";
import { forgive } from "./forgive";
import { MixResult } from "./MixResult";

const blank = {
  ...{ kind: "liquid" as StockKind, from: "", stock: "", target: "", volume: "" },
  ...{ companions: "", name: "", madeBy: "", labelHours: "" },
};
export type MixTyped = typeof blank;

export function Mixing({ view }: PageProps) {
  const sums = useSums();
  const w = useSumWords().mixing;
  const studio = useStudio();
  const nowMs = useNowMs();
  const [typed, setTyped] = useState<MixTyped>(blank);
  const set = (part: Partial<MixTyped>) => setTyped((now) => ({ ...now, ...part }));
  const products = [...studio.product.values()].filter(({ kind }) => kind === "disinfectant");
  const from = studio.product.get(typed.from);
  const choose = (id: string) => {
    const product = studio.product.get(id);
    const hours = product?.label?.hoursDiluted;
    set({ from: id, ...(product && { name: product.name }), ...(hours && { labelHours: String(hours) }) });
  };
  const found = mixFrom(typed, nowMs, view.zone, w.unnamed, sums);
  const cautions = found?.ok ? cautionsFor(found.value.mix, sums) : [neverMix(sums)];
  const entry = (field: "stock" | "target" | "volume" | "companions" | "name" | "madeBy" | "labelHours") => ({
    value: typed[field],
    onChange: (value: string) => set({ [field]: value }),
  });
  return (
    <>
      <Section title={w.what} hint={w.whatHint}>
        <Choice
          label={w.kind}
          value={typed.kind}
          options={stockKinds.map((kind) => [kind, w.kinds[kind]] as const)}
          onChange={(kind) => set({ kind })}
        />
        <div className={fieldStyles.fields}>
          {products.length > 0 && (
            <Select
              label={w.from}
              value={typed.from}
              options={[["", w.notOnShelf], ...products.map(({ id, name }) => [id, name] as const)]}
              onChange={choose}
            />
          )}
          <Entry label={w.stock[typed.kind]} hint={w.stockHint[typed.kind]} {...entry("stock")} />
          <Entry
            label={w.target}
            hint={typed.kind === "alcohol" ? w.targetHintAlcohol : w.targetHint}
            {...entry("target")}
          />
          <Entry label={w.volume} hint={w.volumeHint} {...entry("volume")} />
          <Entry label={w.companions} hint={w.companionsHint} {...entry("companions")} />
        </div>
      </Section>

      <Section title={w.answer}>
        <div aria-live="polite" data-testid="mix">
          {found === null && <p>{w.fillIn}</p>}
          {found && !found.ok && <Verdict tone="no">{wordsIn(found, sums)}</Verdict>}
          {found?.ok && (
            <Verdict tone="yes" lines={found.value.lines}>
              {found.value.spoken}
            </Verdict>
          )}
        </div>
        <ul className={fieldStyles.cautions} data-testid="cautions">
          {cautions.map(({ code, words: caution, source }) => (
            <li key={code}>
              <span>
                {caution} <small>[{source}]</small>
              </span>
            </li>
          ))}
        </ul>
      </Section>

      <Section title={w.bottle} hint={w.bottleHint}>
        <div className={fieldStyles.fields}>
          <Entry label={w.name} maxLength={60} {...entry("name")} />
          <Entry label={w.madeBy} maxLength={20} {...entry("madeBy")} />
          <Entry label={w.labelHours} hint={w.labelHoursHint} isNumeric {...entry("labelHours")} />
        </div>
        {found?.ok ? <MixResult mix={found.value} typed={typed} from={from} zone={view.zone} /> : <p>{w.noLabelYet}</p>}
      </Section>
    </>
  );
}

/** null until there is something to work out. */
function mixFrom(
  typed: MixTyped,
  nowMs: number,
  zone: string,
  unnamed: string,
  sums: SumPhrases,
): Answer<MixView, string> | null {
  const companions = typed.companions.split(/[,;+]| and /).filter((name) => name.trim() !== "");
  const isWhole = [typed.stock, typed.target, typed.volume].every((text) => text.trim() !== "");
  // What must never meet is said before anything is worked out.
  if (!isWhole && companions.length === 0) return null;
  const amounts = { stock: forgive(typed.stock), target: forgive(typed.target), volume: forgive(typed.volume) };
  const { stock, target, volume } = amounts;
  if (!stock.ok) return stock;
  if (!target.ok) return target;
  if (!volume.ok) return volume;
  const hours = forgive(typed.labelHours);
  const form: MixForm = {
    ...{ kind: typed.kind, stock: stock.value, target: target.value, volume: volume.value, companions },
    productName: typed.name.trim() || unnamed,
    madeBy: typed.madeBy.trim() || "____",
    madeAtMs: nowMs,
    labelHours: hours.ok ? hours.value : typed.labelHours,
    zone,
  };
  const found = mixView(form, sums);
  return isWhole || (!found.ok && found.code === "never-mix") ? found : null;
}
