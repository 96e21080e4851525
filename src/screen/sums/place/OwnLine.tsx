/** The form for one line put otherwise: its figure, and the reason or the source, without which it is not taken. */
import { type FormEvent, useState } from "react";
import type { LineValue, PlaceLine } from "../../../places/line";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { useSumWords } from "../useSumWords";
import { type OverrideDraft, overrideDraftOf, overrideFrom, spans } from "./overrideDraft";

interface Props {
  readonly line: PlaceLine;
  readonly keep: (value: LineValue, reason: string) => Promise<string | null>;
  readonly close: () => void;
}

/** Which fields a kind of line has. */
const hasNumber: readonly LineValue["kind"][] = ["age", "keep", "biological-test", "report", "sharps-fill"];
const hasUnit: readonly LineValue["kind"][] = ["keep", "biological-test"];
const hasWords: readonly LineValue["kind"][] = ["report", "waste", "pack-label", "words"];

export function OwnLine({ line, keep, close }: Props) {
  const w = useSumWords().place;
  const [draft, setDraft] = useState<OverrideDraft>(() => overrideDraftOf(line));
  const [refused, setRefused] = useState<string | null>(null);
  const set = (part: Partial<OverrideDraft>) => setDraft((now) => ({ ...now, ...part }));
  const text = (field: Exclude<keyof OverrideDraft, "kind" | "unit">) => ({
    value: draft[field],
    onChange: (value: string) => set({ [field]: value }),
  });
  const submit = async (submitted: FormEvent) => {
    submitted.preventDefault();
    const found = overrideFrom(draft, line);
    if (!found.ok) return setRefused(w.troubles[found.trouble]);
    const trouble = await keep(found.value, found.reason);
    setRefused(trouble);
    if (trouble === null) close();
  };
  return (
    <form onSubmit={submit} noValidate className={acts.whole}>
      <div className={fields.fields}>
        {hasWords.includes(draft.kind) && <Entry maxLength={300} label={w.fields[draft.kind]} {...text("words")} />}
        {hasNumber.includes(draft.kind) && <Entry isNumeric label={w.numbers[draft.kind]} {...text("number")} />}
        {hasUnit.includes(draft.kind) && (
          <Select
            label={w.unit}
            value={draft.unit}
            options={spans.map((unit) => [unit, w.units[unit]] as const)}
            onChange={(unit) => set({ unit })}
          />
        )}
        {draft.kind === "waste" && (
          <>
            <Entry label={w.colour} {...text("colour")} />
            <Entry label={w.code} {...text("code")} />
            <Entry label={w.route} {...text("route")} />
          </>
        )}
        <Entry label={w.reason} hint={w.reasonHint} maxLength={200} {...text("reason")} />
      </div>
      <div role="alert">{refused}</div>
      <div className={acts.acts}>
        <button type="submit" className={acts.main}>
          {w.keepOwn}
        </button>
        <button type="button" onClick={close}>
          {w.cancel}
        </button>
      </div>
    </form>
  );
}
