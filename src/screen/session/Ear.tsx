/** The microphone: whether it listens, and how loud it is. Lost is said in words and by a struck-through shape. */
import { useEffect, useRef, useSyncExternalStore } from "react";
import { Working } from "../marks/Working";
import { doesListen, type EarCondition } from "../model";
import { useShared } from "../useModel";
import styles from "./Ear.module.css";

export function Ear({ condition }: { condition: EarCondition }) {
  const { words, asks } = useShared();
  const isDown = !doesListen(condition) && condition !== "asking" && condition !== "off";
  return (
    <div className={styles.ear} data-condition={condition} data-testid="ear">
      <svg width="30" height="40" viewBox="0 0 30 40" aria-hidden="true">
        <rect x="9" y="2" width="12" height="22" rx="6" fill="currentcolor" />
        <path d="M4 17v3a11 11 0 0 0 22 0v-3M15 31v7M8 38h14" fill="none" stroke="currentcolor" strokeWidth="3" />
        {!doesListen(condition) && <path d="M2 37L28 3" stroke="var(--alarm)" strokeWidth="4" />}
      </svg>
      <div>
        <span role={isDown ? "alert" : undefined}>{words.ear[condition]}</span>
        {condition === "asking" && <Working on={words.ear.asking} />}
        {doesListen(condition) && <Level />}
        {doesListen(condition) && <SoundLost />}
        {isDown && (
          <button type="button" className={styles.retry} onClick={() => asks.retryMicrophone()}>
            {words.ear.retry}
          </button>
        )}
      </div>
    </div>
  );
}

/** How much sound never reached the ear since the microphone was opened; nothing while none was lost. */
function SoundLost() {
  const { soundLost, words } = useShared();
  const { droppedMs } = useSyncExternalStore(soundLost.subscribe, () => soundLost.now);
  if (droppedMs <= 0) return null;
  return <small data-testid="sound-lost">{words.ear.soundLost((Math.ceil(droppedMs / 100) / 10).toFixed(1))}</small>;
}

/** Ten bars in a row, on a scale of loudness, and a cover that moves off them: nothing is drawn anew. */
export function Level() {
  const { level } = useShared();
  const bar = useRef<HTMLElement>(null);
  useEffect(() => {
    const show = () => {
      if (bar.current) bar.current.style.transform = `translateX(${100 * loudness(level.now)}%)`;
    };
    show();
    return level.subscribe(show);
  }, [level]);
  return (
    <span className={styles.level} aria-hidden="true">
      <i ref={bar} />
    </span>
  );
}

/** 0..1 from -60 dB to 0 dB full scale. */
const loudness = (rms: number): number => Math.min(1, Math.max(0, 1 + (20 * Math.log10(Math.max(rms, 1e-6))) / 60));
