/** What a failed biological test puts in doubt: packs to keep back, sessions that used one, and what was done about it. */
import { useState } from "react";
import { showWall } from "../../../due/zone";
import type { Recall } from "../../../steriliser/links";
import type { Of } from "../../../studio/kinds";
import type { KeptRecord } from "../../../studio/record";
import { packsIn } from "../../../studio/sterile";
import { useShared } from "../../useModel";
import acts from "../parts/Acts.module.css";
import { Entry } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import { useStudio, useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";

interface Props {
  readonly cycle: Of<"cycle">;
  readonly recall: Recall;
  readonly records: readonly KeptRecord[];
  readonly isReading: boolean;
  /** Why the records could not be read; then the list of sessions cannot be relied on. */
  readonly lost: string | null;
  readonly zone: string;
}

export function Recalled({ cycle, recall, records, isReading, lost, zone }: Props) {
  const { words } = useShared();
  const w = useSumWords().steriliser;
  const keeping = useStudioModel();
  const studio = useStudio();
  const { entry } = cycle;
  const [done, setDone] = useState(entry.afterPositive);
  const sessions = records.filter(({ session }) => recall.sessionIds.includes(session));
  return (
    <div className={acts.whole} data-testid={`recall-${entry.cycleId}`}>
      <Verdict
        tone="no"
        lines={[
          w.suspectCycles(recall.suspectCycleIds),
          w.unusedPacks(recall.unusedPackIds),
          w.usedPacks(recall.usedPackIds),
        ]}
      >
        {w.actions[recall.action]}
      </Verdict>
      {lost !== null && <Verdict tone="no">{w.recordsLost(lost)}</Verdict>}
      {isReading ? (
        <p>{w.readingRecords}</p>
      ) : (
        <>
          <h3>{w.sessionsOf(sessions.length)}</h3>
          <ul className={acts.rows}>
            {sessions.map((record) => (
              <li key={record.session} data-mark="bad">
                <span>
                  <b>{record.input.clientReference ?? words.noClient}</b>
                  <small>
                    {showWall(record.atMs, zone)}, {record.input.artist}, {record.input.station}.{" "}
                    {w.packsOf(packsIn(studio, record))}
                  </small>
                </span>
              </li>
            ))}
          </ul>
          <p className={acts.note}>{w.onlyHere}</p>
        </>
      )}
      <Entry label={w.afterPositive} hint={w.afterPositiveHint} maxLength={1000} value={done} onChange={setDone} />
      <div className={acts.acts}>
        <button
          type="button"
          onClick={() =>
            void keeping.keep(w.logged(entry.cycleId), [
              { kind: "cycle", id: entry.cycleId, value: { ...cycle, entry: { ...entry, afterPositive: done } } },
            ])
          }
        >
          {w.keepDone}
        </button>
      </div>
    </div>
  );
}
