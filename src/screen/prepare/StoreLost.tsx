/** The browser deleted what it had kept: said until someone has read it, so that an empty archive is never a quiet one. */
import type { PrepareView } from "../model";
import { addressOf } from "../pages/page";
import { useShared } from "../useModel";
import styles from "./StoreLost.module.css";

export function StoreLost({ loss }: Pick<PrepareView, "loss">) {
  const { words, asks } = useShared();
  const w = words.prepare.lost;
  if (loss === null) return null;
  return (
    <section className={styles.lost} role="alert" data-testid="store-lost">
      <h2>{w.title}</h2>
      <p>{w.found(loss.day, loss.why)}</p>
      <p>{w.about}</p>
      <div className={styles.ways}>
        <a href={addressOf("keeping")}>{words.pages.names.keeping}</a>
        <button type="button" onClick={() => asks.lossRead()}>
          {w.read}
        </button>
      </div>
    </section>
  );
}
