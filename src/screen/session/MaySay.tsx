/** The phrases that are listened for just now, by what they are for: so that they are learned by looking. */
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { commandGroups, groupNames } from "./commandGroups";
import styles from "./MaySay.module.css";

export function MaySay({ view }: { view: SessionView }) {
  const { words, phrases } = useShared();
  const { address } = view.state.context.input;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by keyboard (axe: scrollable-region-focusable)
    <section className={styles.may} aria-label={words.session.maySay} tabIndex={0} data-testid="may-say">
      <h2>
        {words.session.maySay} “{phrases.addresses[address]} …”
      </h2>
      {groupNames.map((group) => {
        const now = commandGroups[group].filter((command) => view.listenedFor.has(command));
        return (
          now.length > 0 && (
            <p key={group}>
              <b>{words.session.groups[group]}</b> {now.map((command) => phrases.commands[command]).join(" · ")}
            </p>
          )
        );
      })}
    </section>
  );
}
