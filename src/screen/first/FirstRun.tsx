/** The first three minutes: see your voice, hear the tour with hands free, read the cautions, watch a session. */
import { useEffect, useState, useSyncExternalStore } from "react";
import { tourStops } from "../../announcements/tour";
import { addressOf } from "../pages/page";
import type { PageProps } from "../pages/screens";
import { Section } from "../prepare/Field";
import { SoundCheck } from "../prepare/SoundCheck";
import { Device } from "../settings/Device";
import { useShared } from "../useModel";
import styles from "./FirstRun.module.css";
import { VoicePicture } from "./VoicePicture";

export function FirstRun({ view }: PageProps) {
  const { words, asks, tour } = useShared();
  const w = words.first;
  const now = useSyncExternalStore(tour.subscribe, () => tour.now);
  const [wasGiven, setGiven] = useState(false);
  const { address } = view.draft;
  // Leaving the page ends what it started: nobody else would.
  useEffect(() => () => asks.endTour(), [asks]);
  return (
    <div className={styles.inOrder}>
      <Device isQuiet />
      <SoundCheck view={view} address={address}>
        <VoicePicture />
      </SoundCheck>
      <Section title={w.tour} hint={w.tourHint}>
        {now === null ? (
          <div className={styles.begin}>
            <button
              type="button"
              className={styles.big}
              onClick={() => {
                setGiven(true);
                asks.beginTour(address);
              }}
            >
              {wasGiven ? w.tourAgain : w.beginTour}
            </button>
            {wasGiven && <p role="status">{w.tourOver}</p>}
          </div>
        ) : (
          <div className={styles.stop} data-testid="tour" data-stop={now.stop} data-stage={now.stage}>
            <p className={styles.place}>{w.of(tourStops.indexOf(now.stop) + 1, tourStops.length)}</p>
            <p className={styles.says} aria-live="polite">
              {now.says}
            </p>
            <p className={styles.heard} role="status">
              {now.stage === "heard" && w.heard}
            </p>
            <div className={styles.acts}>
              <button type="button" className={styles.big} onClick={() => asks.nextInTour()}>
                {w.next}
              </button>
              <button type="button" onClick={() => asks.endTour()}>
                {w.endTour}
              </button>
            </div>
          </div>
        )}
      </Section>
      <Section title={words.prepare.cautions}>
        <ul className={styles.cautions}>
          {words.prepare.cautionList.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Section>
      <Section title={w.practise} hint={words.prepare.practiceAbout}>
        <div className={styles.acts}>
          <button
            type="button"
            className={styles.big}
            disabled={!view.hasPractice || view.busy}
            onClick={() => asks.practise()}
          >
            {words.prepare.practice}
          </button>
          <a href={addressOf("prepare")}>{w.orPrepare}</a>
        </div>
      </Section>
    </div>
  );
}
