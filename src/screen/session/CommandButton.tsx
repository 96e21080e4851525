/** A touch target that gives one command, with its phrase beneath, so that it is learned by looking. */
import type { CommandId } from "../../intent/phrases";
import { Icon } from "../marks/Icon";
import type { DeckIconId } from "../marks/icons";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import styles from "./CommandButton.module.css";

interface Props {
  readonly command: CommandId;
  readonly view: SessionView;
  /** For a grid that places it. */
  readonly area?: string;
  readonly icon?: DeckIconId;
  readonly after?: () => void;
}

export function CommandButton({ command, view, area, icon, after }: Props) {
  const { words, asks, phrases } = useShared();
  return (
    <button
      type="button"
      className={styles.command}
      data-command={command}
      data-area={area}
      data-listened={view.listenedFor.has(command) || undefined}
      onClick={() => {
        asks.command(command, { by: "touch" });
        after?.();
      }}
    >
      {icon && <Icon of={icon} />}
      <b>{words.command[command]}</b>
      <span>{phrases.commands[command]}</span>
    </button>
  );
}
