/** The screen that belongs to where the app stands. */
import { useMemo } from "react";
import type { Model } from "./model";
import { Prepare } from "./prepare/Prepare";
import { Record } from "./record/Record";
import styles from "./Screen.module.css";
import { Session } from "./session/Session";
import { SharedContext, useView, wordsOfView } from "./useModel";

export function Screen({ model }: { model: Model }) {
  const view = useView(model);
  const words = wordsOfView(view);
  const shared = useMemo(() => ({ asks: model.asks, level: model.level, words }), [model, words]);
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
      {view.at === "prepare" && <Prepare view={view} />}
      {view.at === "session" && <Session view={view} />}
      {view.at === "record" && <Record view={view} />}
    </SharedContext>
  );
}
