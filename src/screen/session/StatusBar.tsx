/** Where we are in the session, the hands, the microphone: one line along the top. */
import { memo } from "react";
import { HandMark } from "../marks/HandMark";
import { Mark } from "../marks/Mark";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { Ear } from "./Ear";
import styles from "./StatusBar.module.css";
import type { Standing } from "./standing";

/** One dot for each step: filled behind us, ringed where we are. Past this many they say less than the figure. */
const mostDots = 40;

export function StatusBar({ view, standing }: { view: SessionView; standing: Standing }) {
  const { words } = useShared();
  const { input, world } = view.state.context;
  const { hands } = world.station;
  const w = words.session;
  const flow = world.flows.at(-1);
  const place = flow ? words.command[flow.event] : world.exposure === "resuming" ? w.resuming : w.phase[world.phase];
  const at = standing.now.kind === "steps" ? standing.now.at : 0;
  return (
    <header className={styles.bar}>
      <span className={styles.mark}>
        <Mark size={36} />
      </span>
      <div className={styles.place}>
        <p>
          <b data-testid="phase">{place}</b>
          {at > 0 && <span> {w.of(at, standing.count)}</span>}
          {view.isPractice && <em> {w.practice}</em>}
        </p>
        {standing.count > 0 && standing.count <= mostDots && <Dots count={standing.count} behind={standing.behind} />}
      </div>
      <p className={styles.client}>
        <span>{input.clientReference ?? words.noClient}</span> <span>{input.station}</span>
      </p>
      {world.sharps.opened > 0 && <p className={styles.sharps}>{w.sharps(world.sharps.opened, world.sharps.binned)}</p>}
      <div className={styles.hands} data-hands={hands}>
        <HandMark hands={hands} />
        <span data-testid="hands">{w.hands[hands]}</span>
      </div>
      <Ear condition={view.ear} />
    </header>
  );
}

const Dots = memo(function Dots({ count, behind }: { count: number; behind: number }) {
  return (
    <div className={styles.dots} aria-hidden="true">
      {Array.from({ length: count }, (_, dot) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a dot is its place
        <i key={dot} data-state={dot < behind ? "behind" : dot === behind ? "here" : "ahead"} />
      ))}
    </div>
  );
});
