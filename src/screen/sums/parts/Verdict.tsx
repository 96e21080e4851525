/** An answer in one box: what it comes to, in large letters, with a sign that needs no colour; lines beneath. */
import type { ReactNode } from "react";
import styles from "./Verdict.module.css";

interface Props {
  readonly tone: "yes" | "no" | "plain";
  readonly lines?: readonly string[];
  readonly children: ReactNode;
}

export function Verdict({ tone, lines = [], children }: Props) {
  return (
    <div className={styles.verdict} data-tone={tone}>
      <p>{children}</p>
      {lines.length > 0 && (
        <ul>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
