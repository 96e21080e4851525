/** Before the gloves: what the session needs to know, sound tried, cautions read. An unfinished session stands on top. */
import { useState } from "react";
import { addressWords } from "../../intent/phrases";
import { everyStep } from "../../session/protocol";
import type { PrepareView } from "../model";
import { addressOf } from "../pages/page";
import { Device } from "../settings/Device";
import { useShared } from "../useModel";
import { languageChoices } from "../words/fetchedWords";
import { logTrouble } from "../words/logTrouble";
import { Choice, Field, Section, Tick } from "./Field";
import { issueOf } from "./issueOf";
import { LabelFields } from "./LabelFields";
import { Lots } from "./Lots";
import styles from "./Prepare.module.css";
import { ProtocolChoice } from "./ProtocolChoice";
import { SoundCheck } from "./SoundCheck";
import { StoreLost } from "./StoreLost";
import { Unfinished } from "./Unfinished";
import { useDraft } from "./useDraft";

export function Prepare({ view }: { view: PrepareView }) {
  const { words, asks, phrases } = useShared();
  const w = words.prepare;
  const { draft, change, protocol, from, carriedOver } = useDraft(view);
  const [isTried, setTried] = useState(false);
  const issues = isTried && !from.ok ? from.issues : [];
  const cautions = from.ok ? from.cautions : [];
  const flagged = [...issues, ...cautions];
  const surfaces = protocol.products.filter((slot) => slot.use === "surfaceDisinfectant");
  const others = protocol.products.filter((slot) => slot.use !== "surfaceDisinfectant");
  const text = (field: "clientReference" | "artist" | "station") => ({
    value: draft[field],
    issue: issueOf(flagged, field),
    onChange: (value: string) => change({ [field]: value }),
  });
  const start = () => {
    setTried(true);
    if (from.ok) asks.begin(from.input, draft);
  };

  return (
    <main>
      <header className={styles.head}>
        <h1>{words.pages.names.prepare}</h1>
        <p>{words.pages.leads.prepare}</p>
      </header>

      {view.draft.artist === "" && (
        <p className={styles.offer}>
          {words.first.offer} <a href={addressOf("welcome")}>{words.pages.names.welcome}</a>
        </p>
      )}
      <Device isQuiet />

      <StoreLost loss={view.loss} />
      <Unfinished view={view} />

      <form
        className={styles.form}
        noValidate
        onSubmit={(submitted) => {
          submitted.preventDefault();
          start();
        }}
      >
        <ProtocolChoice view={view} chosen={protocol.id} choose={(id) => change({ protocol: id })} />

        <Section title={w.who}>
          <div className={styles.fields}>
            <Field label={w.client} hint={w.clientHint} {...text("clientReference")} />
            <Field label={w.artist} {...text("artist")} autoComplete="name" />
            <Field label={w.station} {...text("station")} />
            <Choice
              label={w.address}
              hint={w.addressHint}
              value={draft.address}
              options={addressWords.map((word) => [word, phrases.addresses[word]] as const)}
              onChange={(address) => change({ address })}
            />
            <Choice
              label={w.language}
              value={draft.language}
              options={languageChoices}
              onChange={(language) => asks.changeSettings({ language })}
            />
            <Choice
              label={w.pace}
              hint={draft.brisk ? w.briskAbout : w.carefulAbout}
              value={draft.brisk ? "brisk" : "careful"}
              options={
                [
                  ["careful", w.careful],
                  ["brisk", w.brisk],
                ] as const
              }
              onChange={(pace) => change({ brisk: pace === "brisk" })}
            />
          </div>
        </Section>

        <Section title={w.products} hint={w.productsHint}>
          {surfaces.map((slot) => (
            <LabelFields key={slot.id} slot={slot} draft={draft} change={change} issues={flagged} zone={view.zone} />
          ))}
          {others.length > 0 && (
            <details className={styles.more}>
              <summary>{w.otherProducts}</summary>
              {others.map((slot) => (
                <LabelFields
                  key={slot.id}
                  slot={slot}
                  draft={draft}
                  change={change}
                  issues={flagged}
                  zone={view.zone}
                />
              ))}
            </details>
          )}
        </Section>

        <Lots view={view} protocol={protocol} draft={draft} change={change} issues={flagged} />

        {carriedOver.length > 0 && (
          <Section title={w.carriedOver} hint={w.carriedOverHint}>
            <ul className={styles.carried}>
              {carriedOver.map((id) => (
                <li key={id}>{protocol.items.find((item) => item.id === id)?.name[draft.language] ?? id}</li>
              ))}
            </ul>
          </Section>
        )}

        <SoundCheck view={view} address={draft.address} />

        <Section title={w.cautions}>
          <ul className={styles.cautions}>
            {w.cautionList.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
          <p className={styles.about}>
            {protocol.name[draft.language] ?? protocol.name.en}: {w.steps(everyStep(protocol).length)}
          </p>
        </Section>

        <div className={styles.go}>
          <div role="alert">
            {view.trouble && (
              <p className={styles.trouble}>
                {view.trouble.code === "not-fetched"
                  ? words.pages.partNotFetched
                  : w.cannotResume(logTrouble(words, view.trouble.code))}
              </p>
            )}
            {issues.length > 0 && (
              <p className={styles.trouble}>
                {w.mend} {issues.length}
              </p>
            )}
          </div>
          <Tick
            label={w.letterKeys}
            hint={w.letterKeysHint}
            checked={draft.letterKeys}
            onChange={(letterKeys) => change({ letterKeys })}
          />
          <button type="submit" className={styles.start} disabled={view.busy}>
            {view.busy ? w.starting : w.start}
          </button>
        </div>
      </form>

      <section className={styles.practice}>
        <button type="button" disabled={!view.hasPractice || view.busy} onClick={() => asks.practise()}>
          {w.practice}
        </button>
        <p>{view.hasPractice ? w.practiceAbout : w.noPractice}</p>
      </section>

      <footer className={styles.foot}>
        {view.offline === "waiting" && (
          <p>
            {w.offline.waiting}{" "}
            <button type="button" onClick={() => asks.update()}>
              {w.offline.update}
            </button>
          </p>
        )}
      </footer>
    </main>
  );
}
