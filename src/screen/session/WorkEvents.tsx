/** While working there is no step: what can happen is laid out to be touched. */
import type { SessionView } from "../model";
import { CommandButton } from "./CommandButton";
import { commandGroups } from "./commandGroups";
import styles from "./WorkEvents.module.css";

export function WorkEvents({ view }: { view: SessionView }) {
  const shown = commandGroups.happens.filter((c) => view.listenedFor.has(c) && c !== "accident");
  return (
    <div className={styles.events}>
      {shown.map((command) => (
        <CommandButton key={command} command={command} listenedFor={view.listenedFor} />
      ))}
    </div>
  );
}
