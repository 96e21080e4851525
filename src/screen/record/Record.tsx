/** The close: sealed, what it comes to, and the file to take away. A difference in the sharps stands first. */
import { useState } from "react";
import { bookFor } from "../../announcements/phrasebooks";
import { withErased } from "../../export/recordFile";
import { unready } from "../../session/station";
import { kindsIn } from "../../session/world";
import type { RecordView } from "../model";
import { addressOf } from "../pages/page";
import { paperWords } from "../papers/words";
import { PersonalPart } from "../personal/PersonalPart";
import { nameOf } from "../session/standing";
import { useShared } from "../useModel";
import { logTrouble } from "../words/logTrouble";
import { Forms } from "./Forms";
import styles from "./Record.module.css";

export function Record({ view }: { view: RecordView }) {
  const { words, asks } = useShared();
  const w = words.record;
  const { input, world } = view.state.context;
  const book = bookFor(input.language);
  const { discrepancy } = world.sharps;
  const left = unready(world.station, kindsIn(input));
  const { sealing } = view;
  const [gone, setGone] = useState<readonly number[]>([]);
  const record = sealing.step === "sealed" ? withErased(sealing.record, gone) : null;
  const figures: readonly (readonly [string, string | number])[] = [
    [w.figure.client, gone.includes(0) ? words.noClient : (input.clientReference ?? words.noClient)],
    [w.figure.artist, input.artist],
    [w.figure.station, input.station],
    [w.figure.protocol, `${input.protocol.name[input.language] ?? input.protocol.name.en} ${input.protocol.version}`],
    [w.figure.entries, world.count],
    [w.figure.sharps, world.sharps.opened],
    ...(sealing.step === "sealed" && sealing.record.closing
      ? ([
          [w.figure.wet, sealing.record.closing.summary.wetClocks.filter((c) => c.ended === "ready").length],
          [w.figure.refused, sealing.record.closing.summary.refused.length],
        ] as const)
      : []),
    [w.figure.deviations, world.deviations.length],
    [w.figure.leftOut, world.skipped.length],
    [w.figure.gaps, world.gaps],
  ];
  return (
    <main className={styles.page}>
      <div className={styles.screen}>
        <header className={styles.head} data-step={sealing.step}>
          <Seal isSealed={sealing.step === "sealed"} />
          <div>
            <h1>{w.title}</h1>
            <p role="status" data-testid="sealing">
              {sealing.step === "sealed" ? w.sealed : sealing.step === "sealing" ? w.sealing : w.notSealed}
              {view.isPractice && `. ${w.practice}`}
            </p>
          </div>
        </header>
        {sealing.step === "failed" && (
          <p role="alert" className={styles.trouble}>
            {w.sealFailed(logTrouble(words, sealing.code))}
          </p>
        )}

        <ul className={styles.verdicts}>
          <li data-good={discrepancy === null || undefined}>
            {discrepancy === null ? w.balanced : w.discrepancy(words.session.discrepancies[discrepancy])}
          </li>
          <li data-good={left.length === 0 || undefined}>
            {left.length === 0 ? (
              w.allReady
            ) : (
              <>
                {w.unready}: {left.map((id) => nameOf(view.state, id)).join(", ")}
              </>
            )}
          </li>
        </ul>

        <AccidentReport view={view} />

        <div className={styles.actions}>
          <button type="button" className={styles.save} disabled={sealing.step !== "sealed"} onClick={asks.saveRecord}>
            {w.save}
          </button>
          <button type="button" disabled={sealing.step === "sealing"} onClick={asks.nextClient}>
            {w.again}
          </button>
        </div>
        <p className={styles.hint}>{w.saveHint}</p>

        <section className={styles.part} aria-label={w.figures}>
          <h2>{w.figures}</h2>
          <dl>
            {figures.map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </section>

        <section className={styles.part} aria-label={w.deviations}>
          <h2>{w.deviations}</h2>
          {world.deviations.length === 0 ? (
            <p>{w.noDeviations}</p>
          ) : (
            <ol className={styles.deviations}>
              {world.deviations.map(({ code, item }, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the list is kept and never changes
                <li key={at}>
                  {item
                    ? book.deviated[code].named.replace("{item}", nameOf(view.state, item))
                    : book.deviated[code].plain}
                </li>
              ))}
            </ol>
          )}
        </section>
        {record && !view.isPractice && (
          <PersonalPart session={record.header.session} erased={(places) => setGone([...gone, ...places])} />
        )}
        <p className={styles.hint}>{w.proves}</p>
      </div>
      {record && <Forms record={record} isPractice={view.isPractice} />}
    </main>
  );
}

/** After an accident: the artist's own report is begun from here, filled in from the sealed facts. */
function AccidentReport({ view: { state, sealing } }: { view: RecordView }) {
  const { language, asks, handOver } = useShared();
  const { clinicianNow, after: w } = paperWords(language).accident;
  const hadOne = state.context.world.exposure !== "none";
  const record = sealing.step === "sealed" ? sealing.record : null;
  const hasOne = record?.closing ? record.closing.summary.exposures.length > 0 : hadOne;
  if (!hasOne) return null;
  const go = () => {
    if (record) handOver.ofAccident.put(record);
    location.hash = addressOf("accident");
    asks.nextClient();
  };
  return (
    <section className={styles.accident} aria-label={w.title}>
      <h2>{w.title}</h2>
      <p>{clinicianNow}</p>
      <p>{w.about}</p>
      <button type="button" disabled={sealing.step === "sealing"} onClick={go}>
        {w.report}
      </button>
    </section>
  );
}

/** A ring of dots, closed when the seal is on disk. */
function Seal({ isSealed }: { isSealed: boolean }) {
  const dots = Array.from({ length: 24 }, (_, dot) => (dot * Math.PI) / 12);
  return (
    <svg width="112" height="112" viewBox="-56 -56 112 112" aria-hidden="true">
      {dots.map((angle, dot) => (
        <circle
          key={angle}
          cx={46 * Math.sin(angle)}
          cy={-46 * Math.cos(angle)}
          r={isSealed ? 4.5 : 2 + dot / 12}
          fill={isSealed ? "var(--soap)" : "var(--line)"}
        />
      ))}
      {isSealed && (
        <path d="M-20 2l14 15 26-32" fill="none" stroke="var(--soap)" strokeWidth="9" strokeLinecap="round" />
      )}
    </svg>
  );
}
