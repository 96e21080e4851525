/** Washing and rubbing, timed aloud: nothing to look at and nothing to touch until it is done. */
import { bookFor } from "../../../announcements/phrasebooks";
import { type HandMethod, publishedDurations } from "../../../hands/durations";
import { timerView } from "../../../hands/timer";
import { Section } from "../../prepare/Field";
import acts from "../parts/Acts.module.css";
import { useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";
import styles from "./Hands.module.css";
import { partsOf, useHandTimer } from "./useHandTimer";

const methods: readonly HandMethod[] = ["wash", "rub"];
const dots = Array.from({ length: 40 }, (_, dot) => (dot * Math.PI) / 20);

export function Hands() {
  const w = useSumWords().hands;
  const keeping = useStudioModel();
  const { number } = bookFor("en");
  const { timer, told, begin, end } = useHandTimer((said) => keeping.say(partsOf(said, number, w.spoken)));
  const shown = timer ? timerView(timer) : null;
  return (
    <>
      <div className={styles.timer} data-state={timer?.state ?? "still"} data-testid="hand-timer">
        <svg viewBox="-60 -60 120 120" aria-hidden="true">
          {dots.map((angle, dot) => (
            <circle
              key={angle}
              className={dot < Math.floor((shown?.share ?? 0) * dots.length) ? styles.past : styles.ahead}
              cx={52 * Math.sin(angle)}
              cy={-52 * Math.cos(angle)}
              r={3.2}
            />
          ))}
        </svg>
        <p className={styles.left} role="timer">
          {shown ? w.seconds(shown.leftS) : w.ready}
        </p>
        <p className={styles.said} role="status" data-testid="hand-said">
          {timer && (told ? w.shown(told) : w.goOn[timer.method])}
        </p>
      </div>
      <div className={styles.deck}>
        {timer?.state === "running" ? (
          <button type="button" onClick={end}>
            {w.stop}
          </button>
        ) : (
          methods.map((method) => (
            <button key={method} type="button" onClick={() => begin(method)}>
              {w.start[method]}
            </button>
          ))
        )}
      </div>
      <Section title={w.which} hint={w.whichHint}>
        <ul className={acts.rows}>
          {publishedDurations.map(({ method, leastMs, mostMs, source, status }) => (
            <li key={`${method} ${source}`}>
              <span>
                <b>{w.published(w.methods[method], leastMs / 1000, mostMs === null ? null : mostMs / 1000)}</b>
                <small>
                  {source}
                  {status === "confirmed" ? "" : ` (${status})`}
                </small>
              </span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}
