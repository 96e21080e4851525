/** What is being said and what was just heard. */
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import styles from "./Talk.module.css";

export function Talk({ view }: { view: SessionView }) {
  const { words, phrases } = useShared();
  const { address } = view.state.context.input;
  const w = words.session;
  return (
    <section className={styles.talk} data-part="talk" aria-label={w.says}>
      <p className={styles.says} data-speaking={view.speaking !== null || undefined}>
        <b>{w.says}</b>
        <span data-testid="says">{view.speaking ?? w.silent}</span>
      </p>
      <p className={styles.heard}>
        <b>{w.heard}</b>
        <span data-testid="heard">
          {view.lastHeard ? `${phrases.addresses[address]} ${phrases.commands[view.lastHeard]}` : w.nothingHeard}
        </span>
      </p>
    </section>
  );
}
