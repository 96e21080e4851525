/** The touch targets that never move. The accident is always among them. */
import type { CommandId } from "../../intent/phrases";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { CommandButton } from "./CommandButton";
import styles from "./Deck.module.css";
import type { Panel } from "./Session";

const first: readonly CommandId[] = ["done", "yes", "no", "confirm"];
const second: readonly CommandId[] = ["again", "back"];

interface Props {
  readonly view: SessionView;
  readonly panel: Panel;
  readonly openPanel: (panel: Panel) => void;
}

export function Deck({ view, panel, openPanel }: Props) {
  const { words } = useShared();
  const pauses = view.state.context.world.paused ? "resume" : "pause";
  return (
    <nav className={styles.deck} aria-label={words.session.everything}>
      {first.map((command) => (
        <CommandButton key={command} command={command} view={view} area={command} />
      ))}
      {second.map((command) => (
        <CommandButton key={command} command={command} view={view} area={command} />
      ))}
      <CommandButton command={pauses} view={view} area="pause" />
      <button
        type="button"
        className={styles.opens}
        data-area="happened"
        aria-expanded={panel === "happened"}
        onClick={() => openPanel("happened")}
      >
        <b>{words.session.happened}</b>
      </button>
      <button
        type="button"
        className={styles.opens}
        data-area="everything"
        aria-expanded={panel === "everything"}
        onClick={() => openPanel("everything")}
      >
        <b>{words.session.everything}</b>
        <span>{words.session.keys}</span>
      </button>
      <CommandButton command="accident" view={view} area="accident" />
    </nav>
  );
}
