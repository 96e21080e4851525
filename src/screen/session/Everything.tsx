/** Over the screen: every command as a touch target with its phrase, and which keys give it. */
import { useEffect, useRef } from "react";
import { keyedCommands, keysOf, outOfUseKey } from "../keys";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { CommandButton } from "./CommandButton";
import { commandGroups, type GroupName, groupNames } from "./commandGroups";
import styles from "./Everything.module.css";
import { OutOfUse } from "./OutOfUse";

interface Props {
  readonly view: SessionView;
  readonly only: GroupName | null;
  readonly close: () => void;
}

export function Everything({ view, only, close }: Props) {
  const { words } = useShared();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const w = words.session;
  return (
    <dialog ref={dialog} className={styles.panel} onClose={close} aria-label={only ? w.happened : w.everything}>
      <button type="button" className={styles.close} onClick={close}>
        {w.close}
      </button>
      {(only ? [only] : groupNames).map((group) => (
        <section key={group}>
          <h2>{w.groups[group]}</h2>
          <div className={styles.commands}>
            {commandGroups[group].map((command) => (
              <CommandButton key={command} command={command} listenedFor={view.listenedFor} after={close} />
            ))}
          </div>
          {group === "happens" && <OutOfUse view={view} after={close} />}
        </section>
      ))}
      {only === null && (
        <section>
          <h2>{w.keyboard.title}</h2>
          <p>{w.keyboard.pedal}</p>
          <dl className={styles.keys}>
            {keyedCommands
              .filter((command) => keysOf(command, view.letterKeys).length > 0)
              .map((command) => (
                <div key={command}>
                  <dt>{words.command[command]}</dt>
                  <dd>
                    {keysOf(command, view.letterKeys).map((key) => (
                      <kbd key={key}>{key}</kbd>
                    ))}
                  </dd>
                </div>
              ))}
            {view.letterKeys && (
              <div>
                <dt>{w.outOfUse.take}</dt>
                <dd>
                  <kbd>{outOfUseKey.toUpperCase()}</kbd>
                </dd>
              </div>
            )}
          </dl>
        </section>
      )}
      <CommandButton command="accident" listenedFor={view.listenedFor} after={close} />
    </dialog>
  );
}
