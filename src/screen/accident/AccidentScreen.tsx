/** The artist's own report of an accident: a clinician first, then the form; it is kept as a locked file or on paper alone. */
import { useEffect, useState } from "react";
import { readRecord } from "../../export/readRecord";
import type { RecordFile } from "../../export/recordFile";
import { type ExposureReport, emptyReport, lockReport, openReport, reportsFrom } from "../../exposure/report";
import type { PageProps } from "../pages/screens";
import { paperWords } from "../papers/words";
import { Section } from "../prepare/Field";
import { Entry } from "../sums/parts/Entry";
import { useShared } from "../useModel";
import styles from "./Accident.module.css";
import { AccidentSheet, FirstAid, fieldNames } from "./AccidentSheet";

export function AccidentScreen({ view }: PageProps) {
  const { language, handOver } = useShared();
  const papers = paperWords(language);
  const w = papers.accident;
  const from = (record: RecordFile) => reportsFrom(record, papers.phases).at(-1);
  // Carried here from the session's close, and no further.
  const { ofAccident } = handOver;
  const [carried] = useState(() => (ofAccident.now ? from(ofAccident.now) : undefined));
  useEffect(() => ofAccident.put(null), [ofAccident]);
  const [report, setReport] = useState<ExposureReport>(carried ?? emptyReport(view.zone));
  const [secret, setSecret] = useState({ passphrase: "", again: "" });
  const [said, say] = useState<{ tone: "good" | "bad"; text: string } | null>(
    carried ? { tone: "good", text: w.filled } : null,
  );
  const bad = (text: string) => say({ tone: "bad", text });

  const fill = async (file: File | undefined) => {
    if (!file) return;
    const read = file.size > 64_000_000 ? null : readRecord(new Uint8Array(await file.arrayBuffer()));
    const last = read?.ok ? from(read.record) : undefined;
    if (!last) return bad(read?.ok ? w.noAccident : w.noRecord);
    setReport(last);
    say({ tone: "good", text: w.filled });
  };
  const open = async (file: File | undefined) => {
    if (!file) return;
    const opened = file.size > 1_000_000 ? null : await openReport(await file.text(), secret.passphrase);
    if (!opened?.ok) return bad(opened?.code === "wrong-passphrase" ? w.wrongPassphrase : w.noLock);
    setReport(opened.report);
    say({ tone: "good", text: w.opened });
  };
  const keep = async () => {
    if (secret.passphrase !== secret.again) return bad(w.notSame);
    const locked = await lockReport(report, secret.passphrase);
    if (!locked.ok) return bad(w.short);
    handOver.save(
      `gloveside-accident-${report.at.slice(0, 10) || "report"}.locked.json`,
      locked.text,
      "application/json",
    );
    say({ tone: "good", text: w.handedOver });
  };
  const pick = (label: string, take: (file: File | undefined) => Promise<void>, id: string) => (
    <label className={styles.pick}>
      <span>{label}</span>
      <input
        type="file"
        accept=".json,application/json"
        data-testid={id}
        onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = "";
        }}
      />
    </label>
  );
  return (
    <div className={styles.accident}>
      <div className={styles.screen}>
        <Section title={w.now} hint={w.private}>
          <FirstAid words={papers} />
        </Section>
        <Section title={w.form} hint={w.formHint}>
          {pick(w.fill, fill, "fill-report")}
          {fieldNames.map((name) => (
            <Entry
              key={name}
              type={name === "at" ? "datetime-local" : "text"}
              label={w.fields[name]}
              value={report[name]}
              maxLength={200}
              onChange={(value) => setReport({ ...report, [name]: value })}
            />
          ))}
        </Section>
        <Section title={w.keep} hint={w.keepHint}>
          {(["passphrase", "again"] as const).map((name) => (
            <label key={name} className={styles.secret}>
              <span>{w[name]}</span>
              <input
                type="password"
                autoComplete="off"
                value={secret[name]}
                onChange={(event) => setSecret({ ...secret, [name]: event.target.value })}
              />
            </label>
          ))}
          <div className={styles.acts}>
            <button type="button" onClick={keep}>
              {w.save}
            </button>
            {pick(w.open, open, "open-report")}
            <button type="button" onClick={() => globalThis.print()}>
              {papers.acts.print}
            </button>
          </div>
          <p role="status" data-tone={said?.tone} data-testid="report-said">
            {said?.text}
          </p>
        </Section>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keys */}
      <section className={styles.scroll} tabIndex={0} aria-label={papers.acts.preview} data-paper>
        <AccidentSheet report={report} words={papers} />
      </section>
    </div>
  );
}
