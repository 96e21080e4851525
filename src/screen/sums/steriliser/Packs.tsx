/** Packs out of a cycle: their labels, whether they are sterile today, and what happened to them since. */
import { type FormEvent, useState } from "react";
import { showDate } from "../../../due/calendar";
import { dateAt } from "../../../due/zone";
import { type Pack, packLabel } from "../../../steriliser/packs";
import { isAccepted, type PackRow, packStates, suspectCycles } from "../../../studio/sterile";
import { nextNumber } from "../../../studio/studio";
import { Section, Tick } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { LabelSheet } from "../parts/LabelSheet";
import { readWhole } from "../parts/seconds";
import { useNowMs, useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

export function Packs({ zone }: { zone: string }) {
  const w = useSumWords().steriliser.packs;
  const studio = useStudio();
  const today = dateAt(useNowMs(), zone);
  const rows = [...packStates(studio, today)].reverse();
  return (
    <Section title={w.title} hint={w.hint}>
      <NewPack today={showDate(today)} />
      {rows.length === 0 && <p>{w.none}</p>}
      <ul className={acts.rows} data-testid="packs">
        {rows.map((row) => (
          <PackItem key={row.pack.id} row={row} today={showDate(today)} />
        ))}
      </ul>
    </Section>
  );
}

const events = ["opened", "wet", "torn"] as const;

function PackItem({ row: { pack, state }, today }: { row: PackRow; today: string }) {
  const sums = useSums();
  const w = useSumWords().steriliser.packs;
  const keeping = useStudioModel();
  const label = packLabel(pack, sums);
  const happened = (kind: (typeof events)[number]) => {
    const value: Pack = { ...pack, events: [...pack.events, { kind, on: today }] };
    void keeping.keep(w.became(pack.id, w.states[kind]), [{ kind: "pack", id: pack.id, value }]);
  };
  return (
    <li data-mark={state === "sterile" ? "good" : "bad"}>
      <span>
        <b>
          {pack.id}, {pack.contents}
        </b>
        <small>
          {w.of(pack.cycleId)}, {pack.packedOn}, {pack.initials}
        </small>
      </span>
      <em>{w.states[state]}</em>
      <span className={`${acts.whole} ${acts.acts}`}>
        {state === "sterile" &&
          events.map((kind) => (
            <button key={kind} type="button" onClick={() => happened(kind)}>
              {w.was(pack.id, w.states[kind])}
            </button>
          ))}
      </span>
      <details className={`${acts.whole} ${acts.more}`}>
        <summary>{w.labelOf(pack.id)}</summary>
        <LabelSheet title={w.labelOf(pack.id)} printed={label.printed} spoken={label.spoken} />
      </details>
    </li>
  );
}

function NewPack({ today }: { today: string }) {
  const w = useSumWords().steriliser.packs;
  const keeping = useStudioModel();
  const studio = useStudio();
  const suspect = suspectCycles(studio);
  const cycles = [...studio.cycle.values()]
    .filter((cycle) => isAccepted(cycle) && !suspect.has(cycle.entry.cycleId))
    .sort((a, b) => b.entry.atMs - a.entry.atMs);
  const [chosen, setChosen] = useState("");
  const [contents, setContents] = useState("");
  const [initials, setInitials] = useState("");
  const [months, setMonths] = useState("");
  const [isWrapped, setWrapped] = useState(true);
  const [trouble, setTrouble] = useState<string | null>(null);
  const cycleId = cycles.some(({ entry }) => entry.cycleId === chosen) ? chosen : cycles[0]?.entry.cycleId;
  if (cycleId === undefined) return <p className={acts.note}>{w.noCycle}</p>;

  const submit = async (submitted: FormEvent) => {
    submitted.preventDefault();
    if (contents.trim() === "" || initials.trim() === "") return setTrouble(w.whatAndWho);
    const count = months.trim() === "" ? null : readWhole(months);
    if (months.trim() !== "" && (count === null || count < 1 || count > 60)) return setTrouble(w.badMonths);
    const id = nextNumber("P", studio.pack.keys());
    const expiry = count === null ? { rule: "event" as const } : { rule: "months" as const, months: count };
    const value: Pack = {
      ...{ id, cycleId, contents: contents.trim(), wrapped: isWrapped, packedOn: today, initials: initials.trim() },
      ...{ expiry, events: [] },
    };
    setTrouble(await keeping.keep(w.packed(id), [{ kind: "pack", id, value }]));
  };
  return (
    <form onSubmit={submit} noValidate>
      <fieldset className={acts.form}>
        <legend>{w.add}</legend>
        <div className={fields.fields}>
          <Select
            label={w.cycle}
            value={cycleId}
            options={cycles.map(({ entry }) => [entry.cycleId, `${entry.cycleId}, ${entry.contents}`] as const)}
            onChange={setChosen}
          />
          <Entry label={w.contents} maxLength={100} value={contents} onChange={setContents} />
          <Entry label={w.initials} maxLength={8} value={initials} onChange={setInitials} />
          <Entry isNumeric label={w.months} hint={w.monthsHint} value={months} onChange={setMonths} />
        </div>
        <Tick label={w.wrapped} checked={isWrapped} onChange={setWrapped} />
        <div role="alert">{trouble}</div>
        <div className={acts.acts}>
          <button type="submit" className={acts.main}>
            {w.keep}
          </button>
        </div>
      </fieldset>
    </form>
  );
}
