/** The screen that belongs to where the app stands. */
import { useMemo } from "react";
import type { Model } from "./model";
import { Pages } from "./pages/Pages";
import { Record } from "./record/Record";
import styles from "./Screen.module.css";
import { Session } from "./session/Session";
import { type DeviceParts, languageOf, SharedContext, sharedOf, useSettings, useView } from "./useModel";

interface Props {
  readonly model: Model;
  readonly parts: DeviceParts;
}

export function Screen({ model, parts }: Props) {
  const view = useView(model);
  const settings = useSettings(model);
  const language = languageOf(view, settings);
  // Of the view only its language counts here: a new object at every tick would draw every screen anew.
  const shared = useMemo(() => sharedOf(model, settings, language, parts), [model, settings, language, parts]);
  const { words } = shared;
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
      {view.at === "prepare" && <Pages view={view} />}
      {view.at === "session" && <Session view={view} />}
      {view.at === "record" && <Record view={view} />}
    </SharedContext>
  );
}
