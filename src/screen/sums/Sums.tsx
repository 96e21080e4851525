/** The studio's screens, for bare hands between sessions: which one is open, its name, the others, and what was kept. */
import { useEffect, useRef } from "react";
import type { PrepareView } from "../model";
import { useShared } from "../useModel";
import { Due } from "./due/Due";
import { Hands } from "./hands/Hands";
import { Mixing } from "./mixing/Mixing";
import { Kept } from "./parts/Kept";
import { SumLinks } from "./parts/SumLinks";
import { Place } from "./place/Place";
import styles from "./Sums.module.css";
import { ShelfScreen } from "./shelf/ShelfScreen";
import { SteriliserScreen } from "./steriliser/SteriliserScreen";
import type { SumId } from "./sum";

export interface SumProps {
  readonly view: PrepareView;
}

const screens: Readonly<Record<SumId, (props: SumProps) => React.JSX.Element>> = {
  mixing: Mixing,
  shelf: ShelfScreen,
  steriliser: SteriliserScreen,
  hands: Hands,
  due: Due,
  place: Place,
};

export function Sums({ sum, view }: { sum: SumId; view: PrepareView }) {
  const { words } = useShared();
  const title = useRef<HTMLHeadingElement>(null);
  const Chosen = screens[sum];
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, []);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <SumLinks open={sum} />
        <h1 ref={title} tabIndex={-1}>
          {words.sums.names[sum]}
        </h1>
        <p>{words.sums.leads[sum]}</p>
      </header>
      <main>
        <Chosen view={view} />
      </main>
      <Kept />
    </div>
  );
}
