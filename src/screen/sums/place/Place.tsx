/** The rules of the place: chosen, read line by line with what is not confirmed, and put otherwise by the studio. */
import { useState } from "react";
import { placeName } from "../../../places/name";
import { placeById, places, unconfirmed } from "../../../places/profiles";
import { placeView } from "../../../places/view";
import { onlyId } from "../../../studio/kinds";
import { placeOf } from "../../../studio/placeOf";
import { Section } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Select } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";
import { OwnLine } from "./OwnLine";

export function Place() {
  const sums = useSums();
  const w = useSumWords().place;
  const keeping = useStudioModel();
  const studio = useStudio();
  const { place, isChosen, trouble } = placeOf(studio);
  const kept = studio.place.get(onlyId);
  const overrides = kept?.overrides ?? [];
  const supplied = placeById(place.id);
  const shown = placeView(place, sums);
  const before = supplied.ok ? placeView(supplied.value, sums) : shown;
  const [open, setOpen] = useState<string | null>(null);

  const keep = (act: string, placeId: string, own: typeof overrides) =>
    keeping.keep(act, [{ kind: "place", id: onlyId, value: { placeId, overrides: own } }]);
  const choose = (placeId: string) => {
    const chosen = places.find(({ id }) => id === placeId);
    if (chosen) void keep(w.chosen(placeName(chosen, sums)), placeId, []);
  };

  return (
    <>
      <Section title={w.which} hint={w.whichHint}>
        <div className={fields.fields}>
          <Select
            label={w.place}
            value={isChosen ? place.id : ""}
            options={[
              ...(isChosen ? [] : [["", w.notChosen] as const]),
              ...places.map((one) => [one.id, placeName(one, sums)] as const),
            ]}
            onChange={choose}
          />
        </div>
        {trouble !== null && <Verdict tone="no">{trouble}</Verdict>}
        <Verdict tone="plain" lines={[w.unsure(unconfirmed(place).length, place.lines.length)]}>
          {shown.caution}
        </Verdict>
      </Section>
      <Section title={w.lines} hint={w.linesHint}>
        <ul className={acts.rows} data-testid="lines">
          {shown.rows.map(({ id, says, source, year, mark }) => {
            const line = place.lines.find((one) => one.id === id);
            const isOwn = overrides.some(({ lineId }) => lineId === id);
            return (
              <li key={id} data-mark={mark === null ? "good" : "soon"}>
                <span>
                  <b>{says}</b>
                  <small>
                    {source}, {year}
                    {isOwn && `. ${w.supplied(before.rows.find((row) => row.id === id)?.says ?? w.nothing)}`}
                  </small>
                </span>
                <span className={acts.acts}>
                  {mark !== null && <em>{w.marks[mark as keyof typeof w.marks] ?? mark}</em>}
                  <button
                    type="button"
                    aria-expanded={open === id}
                    aria-label={w.changeOf(says)}
                    onClick={() => setOpen(open === id ? null : id)}
                  >
                    {w.change}
                  </button>
                  {isOwn && (
                    <button
                      type="button"
                      aria-label={w.backOf(says)}
                      onClick={() =>
                        void keep(
                          w.back,
                          place.id,
                          overrides.filter(({ lineId }) => lineId !== id),
                        )
                      }
                    >
                      {w.back}
                    </button>
                  )}
                </span>
                {open === id && line && (
                  <OwnLine
                    line={line}
                    close={() => setOpen(null)}
                    keep={(value, reason) =>
                      keep(w.own, place.id, [
                        ...overrides.filter(({ lineId }) => lineId !== id),
                        { lineId: id, value, reason, year: new Date().getFullYear() },
                      ])
                    }
                  />
                )}
              </li>
            );
          })}
        </ul>
      </Section>
    </>
  );
}
