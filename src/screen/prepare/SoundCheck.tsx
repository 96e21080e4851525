/** The microphone tried with a live level, the speaker with a spoken sentence. Both before the gloves. */
import { type AddressWord, commands } from "../../intent/phrases";
import type { PrepareView } from "../model";
import { Level } from "../session/Ear";
import { useShared } from "../useModel";
import { Section } from "./Field";
import styles from "./SoundCheck.module.css";

export function SoundCheck({ view, address }: { view: PrepareView; address: AddressWord }) {
  const { words, asks } = useShared();
  const w = words.prepare;
  const isOn = view.ear === "on" || view.ear === "asking";
  const isDown = !isOn && view.ear !== "off";
  return (
    <Section title={w.sound}>
      <div className={styles.row}>
        <button type="button" onClick={() => asks.tryMicrophone(!isOn, address)}>
          {isOn ? w.stopMicrophone : w.tryMicrophone}
        </button>
        <div className={styles.answer}>
          <p role={isDown ? "alert" : undefined} data-testid="ear">
            <b>{words.ear[view.ear]}</b> {isDown && words.ear.hint}
          </p>
          {view.ear === "on" && (
            <>
              <Level />
              <p>
                {view.lastHeard
                  ? w.heardNow(`${address} ${commands[view.lastHeard]}`)
                  : w.saySomething(`${address} ${commands.whatNow}`)}
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
    </Section>
  );
}
