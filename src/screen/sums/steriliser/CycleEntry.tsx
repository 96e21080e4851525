/** One cycle, from the machine's file or read off its display: the verdict as it is typed, then into the log. */
import { type ChangeEvent, useId, useState } from "react";
import { bands, showBand } from "../../../steriliser/bands";
import { cycleClasses, type LoadKind, loadKinds } from "../../../steriliser/load";
import type { CycleView } from "../../../steriliser/view";
import { wordsIn } from "../../../sums/answer";
import { Choice, Section } from "../../prepare/Field";
import fieldStyles from "../../prepare/Field.module.css";
import fields from "../../prepare/Prepare.module.css";
import { Entry, Select } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";
import styles from "./CycleEntry.module.css";
import { CycleExtras } from "./CycleExtras";
import { CyclePlot } from "./CyclePlot";
import { type CycleDraft, cycleFrom, emptyCycle } from "./cycleDraft";
import { KeepCycle } from "./KeepCycle";

export function CycleEntry({ zone }: { zone: string }) {
  const sums = useSums();
  const w = useSumWords().steriliser;
  const [draft, setDraft] = useState<CycleDraft>(emptyCycle);
  const set = (part: Partial<CycleDraft>) => setDraft((now) => ({ ...now, ...part }));
  const found = cycleFrom(draft, (field) => w.fields[field], sums);
  const brokeAt = ({ verdict }: CycleView) =>
    verdict.breaks.slice(0, 20).map(({ atMs, kind }) => w.broke((atMs / 60_000).toFixed(1), w.breaks[kind]));
  const text = (field: "coolest" | "hottest" | "minutes" | "kPaAbs") => ({
    label: w.fields[field],
    value: draft[field],
    onChange: (value: string) => set({ [field]: value }),
  });
  return (
    <>
      <Section title={w.cycle} hint={w.cycleHint}>
        <Choice
          label={w.how}
          value={draft.how}
          options={[
            ["file", w.fromFile],
            ["hand", w.byHand],
          ]}
          onChange={(how) => set({ how })}
        />
        {draft.how === "file" ? (
          <CycleFile csv={draft.csv} set={(csv) => set({ csv })} />
        ) : (
          <div className={fields.fields}>
            <Entry isNumeric {...text("coolest")} />
            <Entry isNumeric {...text("hottest")} />
            <Entry isNumeric {...text("minutes")} />
            <Entry isNumeric hint={w.kPaHint} {...text("kPaAbs")} />
          </div>
        )}
        <Select
          label={w.band}
          value={draft.bandId}
          options={bands.map((band) => [band.id, `${showBand(band, sums)} (${band.source})`] as const)}
          onChange={(bandId) => set({ bandId })}
        />
        <Choice
          label={w.cycleClass}
          value={draft.cycleClass}
          options={cycleClasses.map((one) => [one, w.classes[one]] as const)}
          onChange={(cycleClass) => set({ cycleClass })}
        />
        <Loads label={w.load} chosen={draft.load} choose={(load) => set({ load })} />
        {draft.cycleClass === "S" && (
          <Loads label={w.stated} chosen={draft.stated} choose={(stated) => set({ stated })} />
        )}
        <CycleExtras draft={draft} set={set} />
      </Section>

      <Section title={w.verdict} hint={w.verdictHint}>
        <div aria-live="polite" data-testid="verdict">
          {found === null && <p>{w.fillIn}</p>}
          {found && !found.ok && <Verdict tone="no">{wordsIn(found, sums)}</Verdict>}
          {found?.ok && (
            <Verdict tone={found.value.accepted ? "yes" : "no"} lines={brokeAt(found.value)}>
              {found.value.words}
            </Verdict>
          )}
        </div>
        {found?.ok && found.value.plot && <CyclePlot plot={found.value.plot} />}
        {found?.ok && (
          <KeepCycle
            found={found.value}
            draft={draft}
            zone={zone}
            kept={() => set({ csv: "", coolest: "", hottest: "", minutes: "", kPaAbs: "" })}
          />
        )}
      </Section>
    </>
  );
}

function CycleFile({ csv, set }: { csv: string; set: (csv: string) => void }) {
  const w = useSumWords().steriliser;
  const id = useId();
  const read = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    // The reader says in words that a file is too large; a few characters over its limit are enough to know.
    if (file) set(await file.slice(0, 5_000_001).text());
  };
  return (
    <div className={styles.file}>
      <div className={fieldStyles.field}>
        <label htmlFor={`${id}-file`}>{w.file}</label>
        <input id={`${id}-file`} type="file" accept=".csv,.txt,text/csv,text/plain" onChange={read} />
      </div>
      <div className={fieldStyles.field}>
        <label htmlFor={id}>{w.rows}</label>
        <textarea id={id} rows={6} spellCheck={false} value={csv} onChange={({ target }) => set(target.value)} />
        <p className={fieldStyles.hint}>{w.rowsHint}</p>
      </div>
    </div>
  );
}

interface LoadsProps {
  readonly label: string;
  readonly chosen: readonly LoadKind[];
  readonly choose: (chosen: readonly LoadKind[]) => void;
}

function Loads({ label, chosen, choose }: LoadsProps) {
  const w = useSumWords().steriliser;
  return (
    <fieldset className={styles.loads}>
      <legend>{label}</legend>
      {loadKinds.map((kind) => (
        <label key={kind}>
          <input
            type="checkbox"
            checked={chosen.includes(kind)}
            onChange={({ target }) =>
              choose(loadKinds.filter((one) => (one === kind ? target.checked : chosen.includes(one))))
            }
          />
          <span>{w.loads[kind]}</span>
        </label>
      ))}
    </fieldset>
  );
}
