/** "May I touch…?" The companion then asks which, and answers yes or no with the reason. */
import { useShared } from "../useModel";
import styles from "./CommandButton.module.css";

export function MayTouchButton({ after }: { after: () => void }) {
  const { words, asks } = useShared();
  return (
    <button
      type="button"
      className={styles.command}
      data-asks="may.touch"
      onClick={() => {
        asks.tell({ type: "may.touch" }, { by: "touch" });
        after();
      }}
    >
      <b>{words.session.mayTouch}</b>
    </button>
  );
}
