/** The touch targets that never move. The accident is always among them. */
import { memo } from "react";
import { Icon } from "../marks/Icon";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { CommandButton } from "./CommandButton";
import styles from "./Deck.module.css";
import type { Panel } from "./Session";

const fixed = ["done", "yes", "no", "confirm", "again", "back"] as const;

interface Props {
  readonly listenedFor: SessionView["listenedFor"];
  readonly isPaused: boolean;
  readonly panel: Panel;
  readonly openPanel: (panel: Panel) => void;
}

export const Deck = memo(function Deck({ listenedFor, isPaused, panel, openPanel }: Props) {
  const { words } = useShared();
  const pauses = isPaused ? "resume" : "pause";
  return (
    <nav className={styles.deck} aria-label={words.session.everything}>
      {fixed.map((command) => (
        <CommandButton key={command} command={command} listenedFor={listenedFor} area={command} icon={command} />
      ))}
      <CommandButton command={pauses} listenedFor={listenedFor} area="pause" icon={pauses} />
      <button
        type="button"
        className={styles.opens}
        data-area="happened"
        aria-expanded={panel === "happened"}
        onClick={() => openPanel("happened")}
      >
        <Icon of="happened" />
        <b>{words.session.happened}</b>
      </button>
      <button
        type="button"
        className={styles.opens}
        data-area="everything"
        aria-expanded={panel === "everything"}
        onClick={() => openPanel("everything")}
      >
        <Icon of="everything" />
        <b>{words.session.everything}</b>
        <span>{words.session.keys}</span>
      </button>
      <CommandButton command="accident" listenedFor={listenedFor} area="accident" icon="accident" />
    </nav>
  );
});
