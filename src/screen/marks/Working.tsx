/** Work whose end is not known: dots of a needle's track, one after another. Where the share is known, a bar says it. */
import styles from "./Working.module.css";

/** @param on what, for those who hear the screen; the words beside it say the same. */
export function Working({ on }: { on: string }) {
  return (
    <span className={styles.working} role="progressbar" aria-label={on}>
      <i />
      <i />
      <i />
      <i />
      <i />
    </span>
  );
}
