/** Until when a record must be there, by the place's rule: the sessions and cycles of this device, and any other by date. */
import { useEffect, useState } from "react";
import { type CivilDate, parseDate, showDate } from "../../../due/calendar";
import { type KeptRecord, recordKinds } from "../../../due/retention";
import { retentionRows } from "../../../due/view";
import { dateAt } from "../../../due/zone";
import type { PlaceProfile } from "../../../places/line";
import { placeName } from "../../../places/name";
import { placeOf } from "../../../studio/placeOf";
import { PrintedList } from "../../papers/PrintedList";
import { Section } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import { useShared } from "../../useModel";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { Verdict } from "../parts/Verdict";
import type { SessionListed } from "../studioModel";
import { useNowMs, useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

export function Retention({ zone }: { zone: string }) {
  const { words } = useShared();
  const sums = useSums();
  const w = useSumWords().due;
  const studio = useStudio();
  const { place, isChosen } = placeOf(studio);
  const today = dateAt(useNowMs(), zone);
  const { sessions, lost } = useSessions();
  const [kind, setKind] = useState<KeptRecord["kind"]>("client-record");
  const [startsOn, setStartsOn] = useState("");
  const day = parseDate(startsOn);
  const asked: readonly KeptRecord[] = day.ok ? [{ id: w.asked, kind, startsOn: day.value }] : [];
  const kept: readonly KeptRecord[] = [
    ...sessions.map(({ atMs, clientReference }) => ({
      ...{
        id: w.session(clientReference ?? words.noClient),
        kind: "client-record" as const,
        startsOn: dateAt(atMs, zone),
      },
    })),
    ...[...studio.cycle.values()].map(({ entry }) => ({
      ...{ id: w.cycle(entry.cycleId), kind: "steriliser-log" as const, startsOn: dateAt(entry.atMs, zone) },
    })),
  ];
  return (
    <Section title={w.retention} hint={w.byPlace(placeName(place, sums), isChosen)}>
      <div className={fields.fields}>
        <Select
          label={w.kind}
          value={kind}
          options={recordKinds.map((one) => [one, w.kinds[one]] as const)}
          onChange={setKind}
        />
        <Entry type="date" label={w.startsOn} hint={w.startsOnHint} value={startsOn} onChange={setStartsOn} />
      </div>
      <Rows records={asked} place={place} today={today} testId="retention-asked" />
      {lost !== null && <Verdict tone="no">{lost}</Verdict>}
      <h3>{w.onDevice}</h3>
      {kept.length === 0 && <p>{w.noneOnDevice}</p>}
      <Rows records={kept} place={place} today={today} testId="retention-kept" />
      <div className={acts.acts}>
        <PrintedList
          act={w.print}
          title={w.retention}
          notes={[w.byPlace(placeName(place, sums), isChosen), w.sheet.made(showDate(today)), w.nothingDeleted]}
          columns={Object.values(w.sheet.columns)}
          rows={retentionRows(kept, place, today, sums).map(({ recordId, kind, says, until }, at) => ({
            id: `${at}`,
            cells: [recordId, kind, says, until],
          }))}
          testId="due-list"
        />
        <p className={acts.note}>{w.nothingDeleted}</p>
      </div>
    </Section>
  );
}

interface RowsProps {
  readonly records: readonly KeptRecord[];
  readonly place: PlaceProfile;
  readonly today: CivilDate;
  readonly testId: string;
}

function Rows({ records, place, today, testId }: RowsProps) {
  const sums = useSums();
  const w = useSumWords().due;
  return (
    <ul className={acts.rows} data-testid={testId} aria-live="polite">
      {retentionRows(records, place, today, sums).map(({ recordId, kind, until, state, says }, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two sessions may have the same client
        <li key={row} data-mark={state === "may be deleted" ? "soon" : "good"}>
          <span>
            <b>{recordId}</b>
            <small>{w.keepUntil(kind, until)}</small>
          </span>
          <em>{says}</em>
        </li>
      ))}
    </ul>
  );
}

function useSessions(): { sessions: readonly SessionListed[]; lost: string | null } {
  const keeping = useStudioModel();
  const [found, setFound] = useState<Awaited<ReturnType<typeof keeping.sessions>> | null>(null);
  useEffect(() => {
    let isWanted = true;
    void keeping.sessions().then((listed) => isWanted && setFound(listed));
    return () => {
      isWanted = false;
    };
  }, [keeping]);
  return { sessions: found?.ok ? found.value : [], lost: found && !found.ok ? found.words : null };
}
