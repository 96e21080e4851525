/** The log, newest first. A biological test's result comes days later; a failed one lists what it puts in doubt. */
import { showWall } from "../../../due/zone";
import type { Of } from "../../../studio/kinds";
import type { KeptRecord } from "../../../studio/record";
import { isAccepted, recalls, suspectCycles } from "../../../studio/sterile";
import type { Studio } from "../../../studio/studio";
import { Section } from "../../prepare/Field";
import acts from "../parts/Acts.module.css";
import { useRecords, useStudio, useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";
import { Recalled } from "./Recalled";

type Cycle = Of<"cycle">;

export function CycleLog({ zone }: { zone: string }) {
  const w = useSumWords().steriliser;
  const studio = useStudio();
  const records = useRecords(suspectSinceMs(studio));
  const cycles = [...studio.cycle.values()].sort((a, b) => b.entry.atMs - a.entry.atMs);
  const doubts = new Map(
    recalls(studio, records?.ok ? records.value : []).map(({ cycleId, recall }) => [cycleId, recall]),
  );
  const suspect = suspectCycles(studio);
  return (
    <Section title={w.log} hint={w.logHint}>
      {cycles.length === 0 && <p>{w.emptyLog}</p>}
      <ul className={acts.rows} data-testid="log">
        {cycles.map((cycle) => {
          const recall = doubts.get(cycle.entry.cycleId);
          const found: readonly KeptRecord[] = records?.ok ? records.value : [];
          const isInDoubt = suspect.has(cycle.entry.cycleId);
          return (
            <li key={cycle.entry.cycleId} data-mark={isAccepted(cycle) && !isInDoubt ? "good" : "bad"}>
              <CycleRow cycle={cycle} isInDoubt={isInDoubt} zone={zone} />
              {recall && (
                <Recalled
                  cycle={cycle}
                  recall={recall}
                  records={found}
                  isReading={records === null}
                  lost={records && !records.ok ? records.words : null}
                  zone={zone}
                />
              )}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

function CycleRow({ cycle, isInDoubt, zone }: { cycle: Cycle; isInDoubt: boolean; zone: string }) {
  const w = useSumWords().steriliser;
  const keeping = useStudioModel();
  const { entry } = cycle;
  const machine = useStudio().steriliser.get(entry.steriliserId)?.name ?? entry.steriliserId;
  const result = (biological: "negative" | "positive") =>
    void keeping.keep(w.resultOf(entry.cycleId, w.biologicals[biological]), [
      { kind: "cycle", id: entry.cycleId, value: { ...cycle, entry: { ...entry, biological } } },
    ]);
  return (
    <>
      <span>
        <b>
          {entry.cycleId}, {entry.contents}
        </b>
        <small>
          {showWall(entry.atMs, zone)}, {machine}, {entry.operator}.{" "}
          {w.held(entry.verdict.heldMs, entry.verdict.neededMs)}. {w.f0(entry.verdict.f0)}.{" "}
          {w.steam[entry.verdict.steam.finding]}. {w.biologicals[entry.biological]}
        </small>
      </span>
      <em>{isAccepted(cycle) ? (isInDoubt ? w.inDoubt : w.accepted) : w.notAccepted}</em>
      {entry.biological === "awaited" && (
        <span className={`${acts.whole} ${acts.acts}`}>
          <button type="button" onClick={() => result("negative")}>
            {w.setResult(entry.cycleId, w.biologicals.negative)}
          </button>
          <button type="button" onClick={() => result("positive")}>
            {w.setResult(entry.cycleId, w.biologicals.positive)}
          </button>
        </span>
      )}
    </>
  );
}

/** Sessions from before the first cycle cannot have used a pack of the log. Infinity where no test failed. */
function suspectSinceMs(studio: Studio): number {
  const cycles = [...studio.cycle.values()].map(({ entry }) => entry);
  if (!cycles.some(({ biological }) => biological === "positive")) return Number.POSITIVE_INFINITY;
  return Math.min(...cycles.map(({ atMs }) => atMs));
}
