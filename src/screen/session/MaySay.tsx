/**
 * The phrases that are listened for just now, by what they are for: so that they are learned by looking. Groups that there
 * is no room for are left out whole, the least needed first; all of them stand under "All phrases".
 */
import { memo } from "react";
import type { AddressWord } from "../../intent/phrases";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { commandGroups, type GroupName, groupNames } from "./commandGroups";
import styles from "./MaySay.module.css";

const whenAsked: readonly GroupName[] = ["answer", ...groupNames.filter((group) => group !== "answer")];

interface Props {
  readonly listenedFor: SessionView["listenedFor"];
  readonly address: AddressWord;
  readonly isAsked: boolean;
}

export const MaySay = memo(function MaySay({ listenedFor, address, isAsked }: Props) {
  const { words, phrases } = useShared();
  const groups = (isAsked ? whenAsked : groupNames).flatMap((group) => {
    const now = commandGroups[group].filter((command) => listenedFor.has(command));
    return now.length > 0 ? [{ group, said: now.map((command) => phrases.commands[command]).join("\u00a0· ") }] : [];
  });
  const [first, ...others] = groups.map(({ group, said }) => (
    <p key={group}>
      <b>{words.session.groups[group]}</b> {said}
    </p>
  ));
  return (
    <section className={styles.may} aria-label={words.session.maySay} data-testid="may-say" data-whole-groups>
      {/* The heading never stands alone. */}
      <div>
        <h2>
          {words.session.maySay} “{phrases.addresses[address]} …”
        </h2>
        {first}
      </div>
      {others}
    </section>
  );
});
