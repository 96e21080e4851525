/** What a verifier says of a record: three verdicts apart, each with where and why, and how much of it was measured. */
import type { RecordFile } from "../../export/recordFile";
import { factAt, type Place, passes, sealedOtherwise, shortly, type Verdict } from "../../export/verdict";
import type { PaperWords } from "../papers/words";
import styles from "./Verdicts.module.css";

interface Props {
  readonly verdict: Verdict;
  readonly words: PaperWords;
  /** What was judged, to tell which fact a verdict names; null where it could not be read. */
  readonly record: RecordFile | null;
  /** Whose key it is, as the studio's list says; null for one that is on no list. */
  readonly ownerOf?: (key: string) => { readonly name: string | null } | null;
}

export function Verdicts({ verdict, words, record, ownerOf }: Props) {
  const w = words.verify;
  const { intact, signedBy, follows, known, personal } = verdict;
  const whose = (trusted: boolean | null, owner: { readonly name: string | null } | null) => {
    if (trusted === null) return w.unlisted;
    if (!trusted) return w.notTrusted;
    return owner?.name ? w.trusted(owner.name) : w.own;
  };
  return (
    <div className={styles.verdicts} data-testid="verdicts" data-passed={passes(verdict)}>
      <p className={styles.all}>{passes(verdict) ? w.passed : w.failed}</p>
      <ul>
        <li data-verdict="intact" data-good={intact.ok || undefined}>
          <h2>{w.intact}</h2>
          {intact.ok ? (
            <p>{intact.sealed ? w.intactYes(intact.entries) : w.intactOpen(intact.entries)}</p>
          ) : (
            <Fault what={w.intactCodes[intact.code]} fault={intact} words={words} record={record} />
          )}
        </li>
        <li data-verdict="signed" data-good={(signedBy.ok && signedBy.trusted !== false) || undefined}>
          <h2>{w.signed}</h2>
          {signedBy.ok ? (
            <>
              <p>
                <code>{signedBy.fingerprint}</code>
              </p>
              <p>{whose(signedBy.trusted, ownerOf?.(signedBy.key) ?? null)}</p>
              {sealedOtherwise(verdict) && <p>{w.sealedOtherwise}</p>}
            </>
          ) : signedBy.code === "not-checked" ? (
            <p>{w.notChecked}</p>
          ) : (
            <Fault what={w.signedCodes[signedBy.code]} fault={signedBy} words={words} record={record} />
          )}
        </li>
        <li data-verdict="follows" data-good={follows.ok || undefined}>
          <h2>{w.follows}</h2>
          {follows.ok ? (
            <p>{w.followsYes}</p>
          ) : follows.code === "not-checked" ? (
            <p>{w.notChecked}</p>
          ) : (
            <Fault what={w.breachCodes[follows.code]} fault={follows} words={words} record={record} />
          )}
        </li>
      </ul>
      {known && <p>{w.known(known.measured, known.scanned, known.said)}</p>}
      {personal && <Beside personal={personal} words={words} />}
      <p>{w.proves}</p>
    </div>
  );
}

function Beside({ personal, words }: { personal: NonNullable<Verdict["personal"]>; words: PaperWords }) {
  const { client, notes } = personal;
  const w = words.verify;
  const hasNotes = notes.kept + notes.erased + notes.notIncluded > 0;
  return (
    <p data-testid="beside" data-client={client}>
      {w.beside[client]} {hasNotes && w.notes(notes.kept, notes.erased, notes.notIncluded)}
    </p>
  );
}

interface FaultProps {
  readonly what: string;
  readonly fault: { readonly code: string; readonly at: Place; readonly expected: string; readonly found: string };
  readonly words: PaperWords;
  readonly record: RecordFile | null;
}

function Fault({ what, fault: { code, at, expected, found }, words, record }: FaultProps) {
  const w = words.verify;
  const place = w.places[at.part];
  const named = typeof place === "string" ? place : place("n" in at ? at.n : "offset" in at ? at.offset : 0);
  const fact = record && factAt(record.entries, at);
  const where = fact ? w.thatFact(named, shortly(fact.type), fact.clock) : named;
  return (
    <>
      <p>
        <b>{what}</b> {w.where(where)} <small>[{code}]</small>
      </p>
      <dl>
        <div>
          <dt>{w.expected}</dt>
          <dd>{shortly(w.term(expected))}</dd>
        </div>
        <div>
          <dt>{w.found}</dt>
          <dd>{shortly(w.term(found))}</dd>
        </div>
      </dl>
    </>
  );
}
