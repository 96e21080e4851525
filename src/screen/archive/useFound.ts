/** The sessions that answer a question, asked again whenever it changes; an older answer never overtakes a newer one. */
import { useEffect, useState } from "react";
import type { Archive, Found } from "../../finding/archive";
import type { Query } from "../../finding/query";

/** @returns null until the first answer. `turn` asks again. */
export function useFound(archive: Archive | null, query: Query, turn: number): Found | null {
  const [found, setFound] = useState<Found | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new turn asks the same question again
  useEffect(() => {
    if (!archive) return;
    let isWanted = true;
    void archive.find(query).then((answer) => isWanted && setFound(answer));
    return () => {
      isWanted = false;
    };
  }, [archive, query, turn]);
  return found;
}
