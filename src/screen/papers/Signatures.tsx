/** Lines to sign on, by hand and on paper. */

import styles from "./Papers.module.css";
import type { PaperWords } from "./words";

export function Signatures({ words, roles, title }: { words: PaperWords; roles: readonly string[]; title: string }) {
  const w = words.record;
  return (
    <section className={styles.signatures} aria-label={title}>
      {roles.map((role) => (
        <div key={role} className={styles.signature}>
          <span>{role}</span>
          <span>{w.date}</span>
          <span>{w.sign}</span>
        </div>
      ))}
    </section>
  );
}
