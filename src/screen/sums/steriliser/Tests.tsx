/** The studio's sterilisers and the tests that are due for each, by the rule of the chosen place. */
import { type FormEvent, useState } from "react";
import { showDate } from "../../../due/calendar";
import { dateAt } from "../../../due/zone";
import { placeName } from "../../../places/name";
import { testRows } from "../../../steriliser/view";
import type { Of } from "../../../studio/kinds";
import { placeOf } from "../../../studio/placeOf";
import { dayOf, lastBiological } from "../../../studio/sterile";
import { nextNumber } from "../../../studio/studio";
import { Section, Tick } from "../../prepare/Field";
import acts from "../parts/Acts.module.css";
import { Entry } from "../parts/Entry";
import { useNowMs, useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

type Steriliser = Of<"steriliser">;

export function Tests({ zone }: { zone: string }) {
  const sums = useSums();
  const w = useSumWords().steriliser;
  const keeping = useStudioModel();
  const studio = useStudio();
  const today = dateAt(useNowMs(), zone);
  const { place, isChosen } = placeOf(studio);
  const keep = (act: string, value: Steriliser) =>
    void keeping.keep(act, [{ kind: "steriliser", id: value.id, value }]);
  const happened = (one: Steriliser, kind: Steriliser["events"][number]["kind"]) =>
    keep(w.events[kind], { ...one, events: [...one.events, { kind, on: showDate(today) }] });

  return (
    <Section title={w.tests} hint={w.testsBy(placeName(place, sums), isChosen)}>
      {[...studio.steriliser.values()].map((one) => {
        const rows = testRows(
          place,
          {
            lastBiological: lastBiological(studio, one.id, zone),
            lastBowieDick: dayOf(one.lastBowieDick),
            hasVacuum: one.hasVacuum,
            events: one.events.flatMap(({ kind, on }) => {
              const day = dayOf(on);
              return day ? [{ kind, on: day }] : [];
            }),
          },
          today,
          sums,
        );
        return (
          <div key={one.id} className={acts.rows} data-testid={`tests-${one.id}`}>
            <h3>{one.name}</h3>
            <ul className={acts.rows}>
              {rows.map(({ what, due, state, because }) => (
                <li key={what} data-mark={state === "overdue" ? "bad" : state === "later" ? "good" : "soon"}>
                  <span>
                    <b>{what}</b>
                    <small>{because}</small>
                  </span>
                  <em>{w.testStates[state](due)}</em>
                </li>
              ))}
            </ul>
            <div className={acts.acts}>
              {one.hasVacuum && (
                <button type="button" onClick={() => keep(w.bowieDick, { ...one, lastBowieDick: showDate(today) })}>
                  {w.bowieDick}
                </button>
              )}
              <button type="button" onClick={() => happened(one, "installation")}>
                {w.events.installation}
              </button>
              <button type="button" onClick={() => happened(one, "major repair")}>
                {w.events["major repair"]}
              </button>
            </div>
          </div>
        );
      })}
      <NewSteriliser add={(value) => keep(w.added(value.name), value)} />
    </Section>
  );
}

function NewSteriliser({ add }: { add: (value: Steriliser) => void }) {
  const w = useSumWords().steriliser;
  const studio = useStudio();
  const [name, setName] = useState("");
  const [hasVacuum, setVacuum] = useState(true);
  const submit = (submitted: FormEvent) => {
    submitted.preventDefault();
    if (name.trim() === "") return;
    const id = nextNumber("A", studio.steriliser.keys());
    add({ id, name: name.trim(), hasVacuum, lastBowieDick: null, events: [] });
    setName("");
  };
  return (
    <form onSubmit={submit} className={acts.acts}>
      <Entry label={w.newName} maxLength={60} value={name} onChange={setName} />
      <Tick label={w.hasVacuum} checked={hasVacuum} onChange={setVacuum} />
      <button type="submit" disabled={name.trim() === ""}>
        {w.add}
      </button>
    </form>
  );
}
