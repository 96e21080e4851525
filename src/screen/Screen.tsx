/** The screen that belongs to where the app stands. */
import { useMemo } from "react";
import type { CodeCamera } from "../barcode/codeCamera";
import type { Model } from "./model";
import { Pages } from "./pages/Pages";
import type { ProtocolsModel } from "./protocols/protocolsModel";
import { Record } from "./record/Record";
import styles from "./Screen.module.css";
import { Session } from "./session/Session";
import type { StudioModel } from "./sums/studioModel";
import { languageOf, SharedContext, sharedOf, useSettings, useView } from "./useModel";

interface Props {
  readonly model: Model;
  readonly studio: StudioModel | null;
  readonly camera: CodeCamera;
  readonly protocols: ProtocolsModel | null;
}

export function Screen({ model, studio, camera, protocols }: Props) {
  const view = useView(model);
  const settings = useSettings(model);
  const language = languageOf(view, settings);
  // Of the view only its language counts here: a new object at every tick would draw every screen anew.
  const shared = useMemo(
    () => sharedOf(model, settings, language, { studio, camera, protocols }),
    [model, settings, language, studio, camera, protocols],
  );
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
