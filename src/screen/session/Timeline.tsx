/** The plan as a small line of time: hands at work, what stays wet, now. In words for those who hear the screen. */
import { taggedOut } from "../../session/station";
import { stepIn } from "../../session/world";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { type Bar, stillToDo } from "./planFace";
import { nameOf } from "./standing";
import styles from "./Timeline.module.css";

const handsHigh = 26;
const waitHigh = 9;
/** Of the drawing; it is stretched to the width there is. */
const wide = 1000;

export function Timeline({ view }: { view: SessionView }) {
  const { words } = useShared();
  const w = words.session;
  if (!view.plan) return null;
  const { face, readyAt, nextAt } = view.plan;
  const { input } = view.state.context;
  const name = (step: string): string => {
    const shown = stepIn(input, view.state.context.world, step)?.show;
    return shown ? (shown[input.language] ?? shown.en) : step;
  };
  const without = taggedOut(view.state.context.world.station).map((id) => nameOf(view.state, id));
  const x = (sec: number): number => Math.round((sec / face.spanSec) * wide * 10) / 10;
  const high = handsHigh + 4 + face.waits.length * waitHigh;
  const said = ({ kind, step }: Bar): string => {
    if (step === null) return w.changeGloves;
    return kind === "reapply" ? w.wetAgain(name(step)) : name(step);
  };
  const minutes = (sec: number): number => Math.max(0, Math.floor((sec - face.nowSec) / 60));
  return (
    <section className={styles.plan} data-testid="plan" aria-label={w.plan}>
      <p className={styles.heading}>
        <b>{w.freeAt(readyAt, Math.ceil(face.readyInSec / 60))}</b>
        {nextAt && <span>{w.nextSetUpAt(nextAt)}</span>}
        {without.length > 0 && <em data-testid="planWithout">{w.planWithout(without.join(", "))}</em>}
      </p>
      <svg viewBox={`0 0 ${wide} ${high}`} preserveAspectRatio="none" aria-hidden="true" focusable="false">
        {face.bars.map((bar) => (
          <rect
            key={`${bar.kind}${bar.step}${bar.fromSec}`}
            data-kind={bar.kind}
            x={x(bar.fromSec)}
            width={Math.max(2, x(bar.toSec) - x(bar.fromSec) - 2)}
            y={bar.kind === "gloves" ? 8 : bar.kind === "reapply" ? 4 : 1}
            height={bar.kind === "gloves" ? handsHigh - 14 : bar.kind === "reapply" ? handsHigh - 7 : handsHigh - 1}
          />
        ))}
        {face.waits.map((wait, row) => (
          <rect
            key={wait.step}
            data-kind="wet"
            x={x(wait.fromSec)}
            width={Math.max(2, x(Math.min(wait.toSec, face.spanSec)) - x(wait.fromSec))}
            y={handsHigh + 4 + row * waitHigh}
            height={waitHigh - 3}
            rx={2}
          />
        ))}
        <line data-kind="now" x1={x(face.nowSec)} x2={x(face.nowSec)} y1={0} y2={high} />
      </svg>
      <ol className={styles.spoken}>
        {stillToDo(face).map((bar) => (
          <li key={`${bar.kind}${bar.step}${bar.fromSec}`}>{w.inMinutes(said(bar), minutes(bar.fromSec))}</li>
        ))}
      </ol>
    </section>
  );
}
