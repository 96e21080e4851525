/** Whether the browser promised to keep what is here, and how much room there is. */
import { useEffect, useState } from "react";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { Verdict } from "../sums/parts/Verdict";
import { useShared } from "../useModel";
import type { Keeping } from "./keepingModel";
import { archiveWords } from "./words";

type Room = Awaited<ReturnType<Keeping["room"]>>;

export function Promised({ keeping }: { keeping: Keeping }) {
  const { language } = useShared();
  const { keeping: w } = archiveWords(language);
  const [promised, setPromised] = useState<boolean | null | undefined>(undefined);
  const [room, setRoom] = useState<Room>(null);
  useEffect(() => {
    void keeping.isPromised().then(setPromised);
    void keeping.room().then(setRoom);
  }, [keeping]);
  return (
    <Section title={w.place} hint={w.placeHint}>
      <div role="status" data-testid="promise">
        {promised === true && <Verdict tone="yes">{w.promised}</Verdict>}
        {promised === false && <Verdict tone="no">{w.notPromised}</Verdict>}
        {promised === null && <Verdict tone="no">{w.noPromise}</Verdict>}
      </div>
      {promised !== true && (
        <div className={acts.acts}>
          <button type="button" onClick={() => void keeping.askPromise().then(setPromised)}>
            {w.ask}
          </button>
        </div>
      )}
      {room && <p data-testid="room">{w.room(sizeIn(language, room.usedBytes), sizeIn(language, room.ofBytes))}</p>}
    </Section>
  );
}

/** As disks count them: 1000 MB are a GB. One place while they are few. */
function sizeIn(language: string, bytes: number): string {
  const [unit, count] = bytes < 1e9 ? (["megabyte", bytes / 1e6] as const) : (["gigabyte", bytes / 1e9] as const);
  return new Intl.NumberFormat(language, {
    style: "unit",
    unit,
    maximumFractionDigits: count < 100 ? 1 : 0,
  }).format(count);
}
