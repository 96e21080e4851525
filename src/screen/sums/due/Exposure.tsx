/** After a needlestick, cut or splash: first aid and a clinician first; then what is due until when, by whom. */
import { useState } from "react";
import { riskFigures, showRisk } from "../../../due/exposureRisk";
import { agreedFirstAid } from "../../../due/exposureRules";
import { exposureWords } from "../../../due/exposureWords";
import { exposureRows } from "../../../due/view";
import { parseInstant } from "../../../due/zone";
import { wordsIn } from "../../../sums/answer";
import { Section } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import { useShared } from "../../useModel";
import acts from "../parts/Acts.module.css";
import { Entry } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useNowMs } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

const marks = { open: "soon", passed: "bad", "not yet open": "good" } as const;

export function Exposure({ zone }: { zone: string }) {
  const { language } = useShared();
  const sums = useSums();
  const w = useSumWords().due;
  const said = exposureWords(language);
  const nowMs = useNowMs();
  const [at, setAt] = useState("");
  const found = at === "" ? null : parseInstant(at, zone);
  const isAhead = found?.ok && found.value > nowMs;
  return (
    <Section title={w.exposure} hint={w.exposureHint}>
      <ol className={fields.cautions}>
        {agreedFirstAid.map((line) => (
          <li key={line.id}>
            <span>
              <b>{said.firstAid(line)}</b> <small>[{line.source}]</small>
            </span>
          </li>
        ))}
      </ol>
      <div className={fields.fields}>
        <Entry type="datetime-local" label={w.exposedAt} hint={w.exposedHint(zone)} value={at} onChange={setAt} />
      </div>
      <div aria-live="polite" data-testid="exposure">
        {found && !found.ok && <Verdict tone="no">{wordsIn(found, sums)}</Verdict>}
        {isAhead && <Verdict tone="no">{w.notYet}</Verdict>}
        {found?.ok && !isAhead && (
          <ul className={acts.rows}>
            {exposureRows(found.value, zone, nowMs, said).map(({ id, words: due, standing }) => (
              <li key={id} data-mark={marks[standing]}>
                <span>{due}</span>
                <em>{w.standings[standing]}</em>
              </li>
            ))}
          </ul>
        )}
      </div>
      <details className={acts.more}>
        <summary>{w.risk}</summary>
        <p className={acts.note}>{w.riskNote}</p>
        <ul className={acts.rows}>
          {(["HBV", "HCV", "HIV"] as const).flatMap((virus) =>
            riskFigures(virus).map((figure) => <li key={showRisk(figure)}>{showRisk(figure, sums)}</li>),
          )}
        </ul>
      </details>
    </Section>
  );
}
