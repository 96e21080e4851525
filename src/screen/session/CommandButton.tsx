/** A touch target that gives one command, with its phrase beneath, so that it is learned by looking. */
import { memo } from "react";
import type { CommandId } from "../../intent/phrases";
import { Icon } from "../marks/Icon";
import type { DeckIconId } from "../marks/icons";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import styles from "./CommandButton.module.css";

interface Props {
  readonly command: CommandId;
  /** The same set while nothing changed in it, so that a tick of the clocks draws no button anew. */
  readonly listenedFor: SessionView["listenedFor"];
  /** For a grid that places it. */
  readonly area?: string;
  readonly icon?: DeckIconId;
  readonly after?: () => void;
}

export const CommandButton = memo(function CommandButton({ command, listenedFor, area, icon, after }: Props) {
  const { words, asks, phrases } = useShared();
  return (
    <button
      type="button"
      className={styles.command}
      data-command={command}
      data-area={area}
      data-listened={listenedFor.has(command) || undefined}
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
});
