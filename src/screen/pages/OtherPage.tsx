/** A page with its name and its lead; the screen itself comes when it is fetched, or says that it cannot be. */
import { Component, type ReactNode, Suspense, use, useEffect, useRef } from "react";
import { Working } from "../marks/Working";
import type { PrepareView } from "../model";
import { Kept } from "../sums/parts/Kept";
import { useShared } from "../useModel";
import styles from "./Pages.module.css";
import type { OtherPageId } from "./page";
import { pageScreens, speakingPages } from "./screens";
import { usePageRest } from "./usePage";

export function OtherPage({ page, view }: { page: OtherPageId; view: PrepareView }) {
  const { words, studio } = useShared();
  const w = words.pages;
  const title = useRef<HTMLHeadingElement>(null);
  const Chosen = pageScreens[page];
  // A protocol is open.
  const isEditing = usePageRest() !== null && page === "protocols";
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, []);
  return (
    <>
      <header className={styles.head}>
        <h1 ref={title} tabIndex={-1}>
          {w.names[page]}
        </h1>
        <p>{w.leads[page]}</p>
      </header>
      <main>
        <UnlessBroken otherwise={<Broken />}>
          <Suspense
            fallback={
              <p role="status">
                {w.fetching} <Working on={w.fetching} />
              </p>
            }
          >
            {speakingPages.has(page) ? (
              <WithCompanion>
                <Chosen view={view} />
              </WithCompanion>
            ) : (
              <Chosen view={view} />
            )}
          </Suspense>
        </UnlessBroken>
      </main>
      {studio && <Kept isEditing={isEditing} />}
    </>
  );
}

/** Waits for its ear and voice, which come by themselves a moment after the first screen. */
function WithCompanion({ children }: { children: ReactNode }) {
  use(useShared().companion.get());
  return children;
}

function Broken() {
  const { words, asks } = useShared();
  return (
    <div role="alert" className={styles.broken}>
      <p>{words.pages.notFetched}</p>
      <button type="button" onClick={() => asks.reload()}>
        {words.stuck.reload}
      </button>
    </div>
  );
}

/** React tells a class alone that something beneath it threw. */
class UnlessBroken extends Component<{ otherwise: ReactNode; children: ReactNode }, { isBroken: boolean }> {
  override state = { isBroken: false };
  static getDerivedStateFromError = () => ({ isBroken: true });
  override render() {
    return this.state.isBroken ? this.props.otherwise : this.props.children;
  }
}
