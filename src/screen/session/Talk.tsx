/** What is being said, what was just heard, and a few of the phrases that may be said now. */
import { commands } from "../../intent/phrases";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { commandGroups, groupNames } from "./commandGroups";
import styles from "./Talk.module.css";

export function Talk({ view }: { view: SessionView }) {
  const { words } = useShared();
  const { address } = view.state.context.input;
  const w = words.session;
  return (
    <section className={styles.talk} aria-label={w.says}>
      <p className={styles.says} data-speaking={view.speaking !== null || undefined}>
        <b>{w.says}</b>
        <span data-testid="says">{view.speaking ?? w.silent}</span>
      </p>
      <p className={styles.heard}>
        <b>{w.heard}</b>
        <span data-testid="heard">{view.lastHeard ? `${address} ${commands[view.lastHeard]}` : w.nothingHeard}</span>
      </p>
      <div className={styles.may}>
        <b>{address} …</b>
        {groupNames.map((group) => {
          const now = commandGroups[group].filter((command) => view.listenedFor.has(command));
          return (
            now.length > 0 && (
              <p key={group}>
                <i>{w.groups[group]}</i> {now.map((command) => commands[command]).join(" · ")}
              </p>
            )
          );
        })}
      </div>
    </section>
  );
}
