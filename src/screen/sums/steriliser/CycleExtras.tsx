/** How a cycle is judged where the defaults do not fit: air pressure, the longest gap, and how F0 is worked out. */
import { lethalityMethods } from "../../../steriliser/lethality";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { useSumWords } from "../useSumWords";
import type { CycleDraft } from "./cycleDraft";

interface Props {
  readonly draft: CycleDraft;
  readonly set: (part: Partial<CycleDraft>) => void;
}

export function CycleExtras({ draft, set }: Props) {
  const w = useSumWords().steriliser;
  const text = (field: "atmosphereKPa" | "gapSec" | "referenceC" | "zK") => ({
    label: w.fields[field],
    value: draft[field],
    onChange: (value: string) => set({ [field]: value }),
  });
  return (
    <details className={acts.more}>
      <summary>{w.extras}</summary>
      <div className={fields.fields}>
        <Entry isNumeric hint={w.atmosphereHint} {...text("atmosphereKPa")} />
        <Entry isNumeric hint={w.gapHint} {...text("gapSec")} />
        <Select
          label={w.method}
          value={draft.method}
          options={lethalityMethods.map((method) => [method, w.methods[method]] as const)}
          onChange={(method) => set({ method })}
        />
        <Entry isNumeric {...text("referenceC")} />
        <Entry isNumeric {...text("zK")} />
      </div>
    </details>
  );
}
