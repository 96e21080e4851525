/** Each wet surface: a drop that fills, its name, the time left, and what is wanted, in words. */
import { useId } from "react";
import { DropMark } from "../marks/DropMark";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import styles from "./Clocks.module.css";
import { type ClockFace, faceOf } from "./clockFace";
import { nameOf } from "./standing";

export function Clocks({ view }: { view: SessionView }) {
  const { words } = useShared();
  const { world, pendingMs } = view.state.context;
  const faces = Object.values(world.clocks).map((clock) => faceOf(clock, pendingMs));
  return (
    <div className={styles.clocks} data-many={faces.length > 4 || undefined} data-count={faces.length}>
      {faces.length === 0 ? (
        <p className={styles.none}>{words.session.noClocks}</p>
      ) : (
        <ul>
          {faces.map((face) => (
            <Clock key={face.surface} face={face} name={nameOf(view.state, face.surface)} />
          ))}
        </ul>
      )}
    </div>
  );
}

function Clock({ face, name }: { face: ClockFace; name: string }) {
  const { words } = useShared();
  const id = useId();
  return (
    <li className={styles.clock} data-face={face.face} data-testid={`clock-${face.surface}`}>
      <DropMark face={face.face} filled={face.filled} id={id} />
      <div>
        <b>{name}</b>
        {face.left && <span className={styles.left}>{face.left}</span>}
        <span className={styles.wanted}>{words.session.clock[face.face]}</span>
      </div>
    </li>
  );
}
