/** A screen's hold on the studio: drawn again when something was kept, and records read when they are needed. */
import { useEffect, useState, useSyncExternalStore } from "react";
import type { KeptRecord } from "../../studio/record";
import { emptyStudio, type Studio } from "../../studio/studio";
import type { Answer } from "../../sums/answer";
import { useShared } from "../useModel";
import type { StudioModel, StudioNow } from "./studioModel";

export function useStudioModel(): StudioModel {
  const { studio } = useShared();
  if (!studio) throw new Error("the studio's screens stand where nothing can be kept");
  return studio;
}

const none = emptyStudio();
const never = () => () => undefined;
const opening: StudioNow = { at: "opening" };

/** Empty until it has been read, and where there is no store. */
export function useStudio(): Studio {
  const { studio } = useShared();
  const now = useSyncExternalStore(studio?.subscribe ?? never, () => studio?.now ?? opening);
  return now.at === "open" ? now.studio : none;
}

export function useStudioNow(): StudioNow {
  const studio = useStudioModel();
  return useSyncExternalStore(studio.subscribe, () => studio.now);
}

export function useSaying(): string | null {
  const studio = useStudioModel();
  return useSyncExternalStore(studio.subscribe, () => studio.saying);
}

type Read = Answer<readonly KeptRecord[], string>;
const noRecords: Read = { ok: true, value: [] };

/** Records begun at or after `sinceMs`; null while they are read. Infinity reads none. */
export function useRecords(sinceMs: number): Read | null {
  const { studio } = useShared();
  const [read, setRead] = useState<{ sinceMs: number; records: Read } | null>(null);
  useEffect(() => {
    if (!studio || !Number.isFinite(sinceMs)) return;
    let isWanted = true;
    void studio.records(sinceMs).then((records) => isWanted && setRead({ sinceMs, records }));
    return () => {
      isWanted = false;
    };
  }, [studio, sinceMs]);
  if (!Number.isFinite(sinceMs)) return noRecords;
  return read?.sinceMs === sinceMs ? read.records : null;
}

/** The time, looked at again every so often. */
export function useNowMs(everyMs = 30_000): number {
  const [nowMs, setNowMs] = useState(() => Date.now());
  useEffect(() => {
    const watch = setInterval(() => setNowMs(Date.now()), everyMs);
    return () => clearInterval(watch);
  }, [everyMs]);
  return nowMs;
}
