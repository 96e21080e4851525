/** A finding in plain words: the rule and its source, and how it comes to that, step by step. */
import type { DraftFinding } from "../../drafting/findings";
import { useShared } from "../useModel";
import styles from "./Protocols.module.css";

export function FindingNote({ finding }: { finding: DraftFinding }) {
  const w = useShared().words.protocols.editor.check;
  return (
    <div className={styles.finding} data-rule={finding.rule}>
      <p>
        <b>{finding.words}</b>
      </p>
      <details>
        <summary>{w.story}</summary>
        <ol>
          {finding.story.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a story is known by its place
            <li key={at}>{line}</li>
          ))}
        </ol>
      </details>
      <p className={styles.note}>
        {w.source}: {finding.source}
      </p>
    </div>
  );
}
