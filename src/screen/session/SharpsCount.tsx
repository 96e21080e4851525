/** The count of the sharps by touch. It begins at nothing, so that nobody confirms a number that was put before them. */
import { useState } from "react";
import { useShared } from "../useModel";
import styles from "./SharpsCount.module.css";

const mostSharps = 99;

export function SharpsCount({ expected }: { expected: number }) {
  const { words, asks } = useShared();
  const [count, setCount] = useState(0);
  const w = words.session.asks;
  const step = (by: number) => setCount((now) => Math.min(mostSharps, Math.max(0, now + by)));
  return (
    <div className={styles.count} data-expected={expected}>
      <button type="button" aria-label={w.fewer} onClick={() => step(-1)}>
        −
      </button>
      <output aria-live="polite">{count}</output>
      <button type="button" aria-label={w.more} onClick={() => step(1)}>
        +
      </button>
      <button
        type="button"
        className={styles.tell}
        onClick={() => asks.tell({ type: "sharps.counted", inContainer: count }, { by: "touch" })}
      >
        {w.countIs(count)}
      </button>
    </div>
  );
}
