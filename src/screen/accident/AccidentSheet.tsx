/** The report on paper: see a clinician now, first aid, what happened, and what is due until when, by whom. */
import { exposureDue, showExposureDue } from "../../due/exposure";
import { agreedFirstAid } from "../../due/exposureRules";
import { exposureWords } from "../../due/exposureWords";
import { parseInstant } from "../../due/zone";
import type { ExposureReport } from "../../exposure/report";
import styles from "../papers/Papers.module.css";
import { Signatures } from "../papers/Signatures";
import type { PaperWords } from "../papers/words";
import { useShared } from "../useModel";

export const fieldNames = [
  "at",
  "artist",
  "place",
  "phase",
  "device",
  "lot",
  "bodyPart",
  "how",
  "firstAid",
  "source",
  "clinician",
] as const;

/** The clinician stands first, whatever else is done. */
export function FirstAid({ words, loud }: { words: PaperWords; loud?: string | undefined }) {
  const { language } = useShared();
  const said = exposureWords(language);
  return (
    <>
      <p className={loud}>
        <b>{words.accident.clinicianNow}</b>
      </p>
      <ul>
        {agreedFirstAid.map((line) => (
          <li key={line.id}>
            {said.firstAid(line)} <small>[{line.source}]</small>
          </li>
        ))}
      </ul>
    </>
  );
}

export function AccidentSheet({ report, words }: { report: ExposureReport; words: PaperWords }) {
  const w = words.accident;
  const { language } = useShared();
  const at = parseInstant(report.at, report.zone);
  return (
    <article className={styles.sheet} aria-label={w.title} data-testid="accident-sheet">
      <header className={styles.head}>
        <div>
          <h2>{w.title}</h2>
          <p>{w.private}</p>
        </div>
      </header>
      <FirstAid words={words} loud={styles.loud} />
      <table className={`${styles.form} ${styles.answers}`}>
        <tbody>
          {fieldNames.map((name) => (
            <tr key={name}>
              <th scope="row">{w.fields[name]}</th>
              <td className={styles.blank}>{report[name].replace("T", name === "at" ? " " : "T")}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <section>
        <h3>{w.due}</h3>
        {at.ok ? (
          <ul>
            {exposureDue(at.value, report.zone).map((due) => (
              <li key={due.rule.id}>{showExposureDue(due, report.zone, exposureWords(language))}</li>
            ))}
          </ul>
        ) : (
          <p>{w.noTime}</p>
        )}
        <p>{w.caution}</p>
      </section>
      <Signatures words={words} roles={[words.record.signArtist, w.signClinician]} title={words.record.signatures} />
    </article>
  );
}
