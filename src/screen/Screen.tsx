/** The screen that belongs to where the app stands. */
import { useMemo } from "react";
import type { Model } from "./model";
import { Pages } from "./pages/Pages";
import { sessionScreens } from "./pages/screens";
import styles from "./Screen.module.css";
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
  // There before a session is: no screen of a session is ever waited for.
  const of = sessionScreens.now;
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
      {view.at === "session" && of && <of.Session view={view} />}
      {view.at === "record" && of && <of.Record view={view} />}
    </SharedContext>
  );
}
