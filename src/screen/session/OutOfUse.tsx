/** Things taken out of use: takes one out, takes one back. No phrase is trained for it; a touch and a key are. */
import { taggedOut } from "../../session/station";
import { outOfUseKey } from "../keys";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import styles from "./OutOfUse.module.css";
import { nameOf } from "./standing";

const touch = { by: "touch" } as const;

export function OutOfUse({ view, after }: { view: SessionView; after: () => void }) {
  const { words, asks } = useShared();
  const w = words.session.outOfUse;
  const tell = (event: Parameters<typeof asks.tell>[0]) => {
    asks.tell(event, touch);
    after();
  };
  return (
    <section>
      <h2>{w.title}</h2>
      <div className={styles.choices}>
        <button type="button" data-testid="takeOutOfUse" onClick={() => tell({ type: "item.outOfUse" })}>
          <b>{w.take}</b>
          {view.letterKeys && <kbd>{outOfUseKey.toUpperCase()}</kbd>}
        </button>
        {taggedOut(view.state.context.world.station).map((id) => (
          <button key={id} type="button" onClick={() => tell({ type: "item.backInUse", item: id })}>
            <b>{w.back(nameOf(view.state, id))}</b>
          </button>
        ))}
      </div>
    </section>
  );
}

/** What is out of use just now, in sight all the time; nothing where nothing is. */
export function OutOfUseNow({ view }: { view: SessionView }) {
  const { words } = useShared();
  const out = taggedOut(view.state.context.world.station);
  if (out.length === 0) return null;
  return (
    <p className={styles.now} data-testid="outOfUse">
      {words.session.outOfUse.title}: {out.map((id) => nameOf(view.state, id)).join(", ")}
    </p>
  );
}
