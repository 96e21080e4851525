/** The station screen: the one thing to do now, read from two metres; everything else around its edge. */
import { useState } from "react";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { Clocks } from "./Clocks";
import { Deck } from "./Deck";
import { Everything } from "./Everything";
import { HoldUp } from "./HoldUp";
import { MaySay } from "./MaySay";
import { NoteSign } from "./NoteSign";
import { Now } from "./Now";
import { OutOfUseNow } from "./OutOfUse";
import { Question } from "./Question";
import styles from "./Session.module.css";
import { StatusBar } from "./StatusBar";
import { standingOf } from "./standing";
import { Talk } from "./Talk";
import { Timeline } from "./Timeline";
import { WorkEvents } from "./WorkEvents";

export type Panel = "none" | "happened" | "everything";

export function Session({ view }: { view: SessionView }) {
  const { words, asks } = useShared();
  const [panel, setPanel] = useState<Panel>("none");
  const standing = standingOf(view.state);
  const { input, world } = view.state.context;
  // Nothing at its side to show: what can happen gets the whole width.
  const isWide = standing.now.kind === "atWork" && !standing.question && Object.keys(world.clocks).length === 0;
  const close = () => setPanel("none");
  return (
    // How many facts are on disk, for those who watch from outside.
    <div
      className={styles.screen}
      data-testid="session"
      data-facts={world.count}
      data-accident={standing.now.kind === "firstAid" || undefined}
      data-wide={isWide || undefined}
      data-paused={world.paused || undefined}
    >
      <StatusBar view={view} standing={standing} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where its words need a scroll, keys must reach it */}
      <main className={styles.main} tabIndex={0}>
        {world.paused && <p className={styles.paused}>{words.session.paused}</p>}
        {view.note && <NoteSign note={view.note} letterKeys={view.letterKeys} />}
        <Now standing={standing} view={view} />
        <div role="alert" className={styles.alerts}>
          {view.notice && (
            <p className={styles.notice} data-kind={view.notice.kind}>
              {view.notice.text}
            </p>
          )}
          {view.notice?.file && (
            <p className={styles.notice} data-kind="file" data-testid="savedFile">
              {words.session.savedFile[view.notice.file]}
            </p>
          )}
          {view.notice?.kind === "notKept" && (
            <button type="button" className={styles.saveSoFar} onClick={() => asks.saveRecord()}>
              {words.session.saveSoFar}
            </button>
          )}
        </div>
        {standing.question && <Question key={standing.question.kind} question={standing.question} view={view} />}
        {standing.now.kind === "atWork" && !standing.question && <WorkEvents view={view} />}
      </main>
      <aside className={styles.side} aria-label={words.session.clocks}>
        <div className={styles.watched}>
          {view.readsCodes && <HoldUp />}
          <Clocks view={view} />
          <OutOfUseNow view={view} />
        </div>
        <MaySay listenedFor={view.listenedFor} address={input.address} isAsked={standing.question !== null} />
      </aside>
      <Timeline view={view} />
      <Talk view={view} />
      <Deck listenedFor={view.listenedFor} isPaused={world.paused} panel={panel} openPanel={setPanel} />
      {panel !== "none" && <Everything view={view} only={panel === "happened" ? "happens" : null} close={close} />}
    </div>
  );
}
