/** The microphone tried with a live level, the speaker with a spoken sentence. Both before the gloves. */
import type { ReactNode } from "react";
import type { AddressWord } from "../../intent/phrases";
import { triedPhrases } from "../../microphone/soundCheck";
import { Working } from "../marks/Working";
import { doesListen, type PrepareView, type SoundCheckView } from "../model";
import { Level } from "../session/Ear";
import { useShared } from "../useModel";
import { Section } from "./Field";
import styles from "./SoundCheck.module.css";

interface Props {
  readonly view: PrepareView;
  readonly address: AddressWord;
  /** Beneath it. */
  readonly children?: ReactNode;
}

export function SoundCheck({ view, address, children }: Props) {
  const { words, asks, phrases } = useShared();
  const w = words.prepare;
  const isOn = doesListen(view.ear) || view.ear === "asking";
  const isDown = !isOn && view.ear !== "off";
  return (
    <Section title={w.sound}>
      <div className={styles.row}>
        <button type="button" onClick={() => asks.checkSound(address)}>
          {w.check}
        </button>
        <div className={styles.answer}>
          {view.soundCheck ? <Checking check={view.soundCheck} address={address} /> : <p>{w.checkAbout}</p>}
        </div>
      </div>
      <div className={styles.row}>
        <button type="button" onClick={() => asks.tryMicrophone(!isOn, address)}>
          {isOn ? w.stopMicrophone : w.tryMicrophone}
        </button>
        <div className={styles.answer}>
          <p role={isDown ? "alert" : undefined} data-testid="ear">
            <b>{words.ear[view.ear]}</b> {isDown && words.ear.hint}
            {view.ear === "asking" && <Working on={words.ear.asking} />}
          </p>
          {doesListen(view.ear) && (
            <>
              <Level />
              <p>
                {view.lastHeard
                  ? w.heardNow(`${phrases.addresses[address]} ${phrases.commands[view.lastHeard]}`)
                  : w.saySomething(`${phrases.addresses[address]} ${phrases.commands.whatNow}`)}
              </p>
            </>
          )}
        </div>
      </div>
      <div className={styles.row}>
        <button type="button" onClick={() => asks.trySpeaker()}>
          {w.trySpeaker}
        </button>
        <p className={styles.answer} data-testid="says" aria-live="polite">
          {view.speaking ? `“${view.speaking}”` : w.speakerAbout}
        </p>
      </div>
      {children}
    </Section>
  );
}

/** The machine, then the three phrases with what became of each, then the verdict and what to change. */
function Checking({ check, address }: { check: SoundCheckView; address: AddressWord }) {
  const { words, phrases } = useShared();
  const w = words.prepare;
  const { verdict } = check;
  const stateOf = (phrase: number): keyof typeof w.checkPhrases => {
    if (phrase < check.heard.length) return check.heard[phrase] ? "heard" : "missed";
    return triedPhrases[phrase] === check.ask ? "now" : "waiting";
  };
  return (
    <div data-testid="sound-check" data-stage={check.stage}>
      {check.stage === "machine" && <p role="status">{w.checkMachine}</p>}
      <ol className={styles.phrases}>
        {triedPhrases.map((phrase, place) => (
          <li key={phrase} data-state={stateOf(place)}>
            <b>
              {phrases.addresses[address]} {phrases.commands[phrase]}
            </b>
            <span>{w.checkPhrases[stateOf(place)]}</span>
          </li>
        ))}
      </ol>
      {verdict && (
        <div className={styles.verdict} data-grade={verdict.grade} role="status">
          <p>
            <b>{w.verdict[verdict.grade]}</b>
          </p>
          {verdict.ratioDb !== null && <p>{w.measured(verdict.ratioDb, verdict.understood)}</p>}
          <ul>
            {verdict.advice.map((advice) => (
              <li key={advice}>{w.advice[advice]}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
