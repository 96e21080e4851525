/** The way between the prepare screen and the studio's screens. */
import { useShared } from "../../useModel";
import { type SumId, sums } from "../sum";
import styles from "./SumLinks.module.css";

export function SumLinks({ open }: { open: SumId | null }) {
  const { words } = useShared();
  return (
    <nav className={styles.links} aria-label={words.sums.studio}>
      {open && (
        <a className={styles.back} href="#prepare">
          {words.sums.back}
        </a>
      )}
      {sums.map((sum) => (
        <a key={sum} href={`#${sum}`} aria-current={sum === open ? "page" : undefined}>
          {words.sums.names[sum]}
        </a>
      ))}
    </nav>
  );
}
