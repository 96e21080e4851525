/** A finding in plain words: the rule and its source, and how it comes to that, step by step. */
import { storyOf } from "../../check/story";
import { checkWordsFor } from "../../check/words";
import type { DraftFinding } from "../../drafting/findings";
import { useShared } from "../useModel";
import styles from "./Protocols.module.css";
import { useProtocolWords } from "./useProtocolWords";

export function FindingNote({ finding: { breach, protocol } }: { finding: DraftFinding }) {
  const { language } = useShared();
  const w = useProtocolWords().editor.check;
  const inWords = checkWordsFor(language);
  const rule = inWords.rules[breach.rule];
  // The rule stands apart, so the line that repeats it at the end of the story is left out.
  const story = storyOf(inWords, protocol, breach).slice(0, -1);
  return (
    <div className={styles.finding} data-rule={breach.rule}>
      <p>
        <b>{rule.words}</b>
      </p>
      <details>
        <summary>{w.story}</summary>
        <ol>
          {story.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a story is known by its place
            <li key={at}>{line}</li>
          ))}
        </ol>
      </details>
      <p className={styles.note}>
        {w.source}: {rule.source}
      </p>
    </div>
  );
}
