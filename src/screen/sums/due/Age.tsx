/** The age gate: a date of birth against the place's rule. Nothing of it is kept. */
import { useState } from "react";
import { ageView } from "../../../due/view";
import { dateAt } from "../../../due/zone";
import { placeName } from "../../../places/name";
import { placeOf } from "../../../studio/placeOf";
import { wordsIn } from "../../../sums/answer";
import { Section } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import { Entry } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useNowMs, useStudio } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

export function Age({ zone }: { zone: string }) {
  const sums = useSums();
  const w = useSumWords().due;
  const [born, setBorn] = useState("");
  const { place, isChosen } = placeOf(useStudio());
  const on = dateAt(useNowMs(), zone);
  const found = born === "" ? null : ageView({ born, on, place }, sums);
  const tone = !found?.ok ? "plain" : found.value.allowed ? "yes" : "no";
  return (
    <Section title={w.age} hint={w.byPlace(placeName(place, sums), isChosen)}>
      <div className={fields.fields}>
        <Entry type="date" label={w.born} hint={w.bornHint} value={born} onChange={setBorn} />
      </div>
      <div aria-live="polite" data-testid="age">
        {found && <Verdict tone={tone}>{found.ok ? found.value.words : wordsIn(found, sums)}</Verdict>}
      </div>
    </Section>
  );
}
