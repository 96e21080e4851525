/** The screen that belongs to where the app stands. */
import { Activity, useMemo } from "react";
import type { Model } from "./model";
import { Prepare } from "./prepare/Prepare";
import { Record } from "./record/Record";
import styles from "./Screen.module.css";
import { Session } from "./session/Session";
import { Sums } from "./sums/Sums";
import type { StudioModel } from "./sums/studioModel";
import { useSum } from "./sums/sum";
import { SharedContext, useView, wordsOfView } from "./useModel";

export function Screen({ model, studio }: { model: Model; studio: StudioModel | null }) {
  const view = useView(model);
  const words = wordsOfView(view);
  const sum = useSum();
  const shared = useMemo(() => ({ asks: model.asks, level: model.level, words, studio }), [model, words, studio]);
  return (
    <SharedContext value={shared}>
      {view.at === "opening" && <main className={styles.still}>{words.opening}</main>}
      {view.at === "stuck" && (
        <main className={styles.still} role="alert">
          <h1>{words.stuck.title}</h1>
          <p>{words.stuck.why}</p>
          <p>{words.stuck[view.why]}</p>
          <button type="button" className={styles.reload} onClick={() => model.asks.reload()}>
            {words.stuck.reload}
          </button>
        </main>
      )}
      {view.at === "prepare" && (
        <>
          {/* Out of sight, but the form keeps what was typed. */}
          <Activity mode={sum && studio ? "hidden" : "visible"}>
            <Prepare view={view} />
          </Activity>
          {sum && studio && <Sums key={sum} sum={sum} view={view} />}
        </>
      )}
      {view.at === "session" && <Session view={view} />}
      {view.at === "record" && <Record view={view} />}
    </SharedContext>
  );
}
