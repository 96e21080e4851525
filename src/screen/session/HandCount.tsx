/** The hand timer that was asked for: seconds left, large, and a bar that fills. It does not chatter to a screen reader. */
import { type HandTimer, timerView } from "../../hands/timer";
import { useShared } from "../useModel";
import styles from "./HandCount.module.css";

export function HandCount({ timer }: { timer: HandTimer }) {
  const { words } = useShared();
  const { leftS, share } = timerView(timer);
  return (
    <p className={styles.count} role="timer" aria-live="off" data-testid="hand-count" data-state={timer.state}>
      <b>{leftS}</b>
      <span>{words.session.secondsLeft}</span>
      <i style={{ "--share": share } as React.CSSProperties} />
    </p>
  );
}
