/** The steriliser log read as a whole: is a cycle accepted, is a pack sterile, and what a failed test calls back. */
import { type CivilDate, parseDate } from "../due/calendar";
import { dateAt } from "../due/zone";
import { type PackUse, packsUsedIn, type Recall, recallAfter } from "../steriliser/links";
import { checkLoad } from "../steriliser/load";
import { type Pack, type PackState, packState } from "../steriliser/packs";
import type { Of } from "./kinds";
import type { KeptRecord } from "./record";
import type { Studio } from "./studio";

type Cycle = Of<"cycle">;

/** The verdict held, its chemical indicator did not fail, and the load was right for the class. */
export function isAccepted({ entry, statedByMaker }: Cycle): boolean {
  const load = checkLoad(entry.cycleClass, entry.load, statedByMaker);
  return entry.verdict.code === "held" && entry.integrator !== "failed" && load.ok;
}

export type PackRow = { readonly pack: Pack; readonly state: PackState };

/** Every pack with its state today, in the order of packing. */
export function packStates(studio: Studio, today: CivilDate): readonly PackRow[] {
  const recalled = new Set(
    recalls(studio, []).flatMap(({ recall }) => [...recall.unusedPackIds, ...recall.usedPackIds]),
  );
  return [...studio.pack.values()]
    .sort((a, b) => a.packedOn.localeCompare(b.packedOn) || a.id.localeCompare(b.id, "en", { numeric: true }))
    .map((pack) => {
      const cycle = studio.cycle.get(pack.cycleId);
      const history = {
        cycleAccepted: cycle !== undefined && isAccepted(cycle),
        cycleClass: cycle?.entry.cycleClass ?? ("N" as const),
        recalled: recalled.has(pack.id),
      };
      return { pack, state: packState(pack, history, today) };
    });
}

/** A pack is used where a session was given its number as a lot. */
export function packUses(studio: Studio, records: readonly KeptRecord[]): readonly PackUse[] {
  return records.flatMap(({ session, input, facts }) => {
    const told = facts.flatMap((fact) => (fact.type === "v1.LotGiven" ? [fact.lot] : []));
    return [...new Set([...input.lots.map(({ lot }) => lot), ...told])]
      .filter((lot) => studio.pack.has(lot))
      .map((packId) => ({ sessionId: session, packId }));
  });
}

export const packsIn = (studio: Studio, record: KeptRecord): readonly string[] =>
  packsUsedIn(record.session, packUses(studio, [record]));

/** For every failed biological test: what it puts in doubt. */
export function recalls(
  studio: Studio,
  records: readonly KeptRecord[],
): readonly { readonly cycleId: string; readonly recall: Recall }[] {
  const cycles = [...studio.cycle.values()].map(({ entry }) => entry);
  const history = {
    cycles: cycles.map(({ cycleId, steriliserId, atMs }) => ({ id: cycleId, steriliserId, atMs })),
    tests: cycles.flatMap(({ cycleId, biological }) =>
      biological === "negative" || biological === "positive" ? [{ cycleId, result: biological }] : [],
    ),
    packs: [...studio.pack.values()],
    uses: packUses(studio, records),
  };
  return history.tests
    .filter(({ result }) => result === "positive")
    .map(({ cycleId }) => ({ cycleId, recall: recallAfter(cycleId, history) }));
}

/** Cycles that a failed biological test puts in doubt: nothing new is packed out of them. */
export const suspectCycles = (studio: Studio): ReadonlySet<string> =>
  new Set(recalls(studio, []).flatMap(({ recall }) => recall.suspectCycleIds));

/** The day of the last biological test of a steriliser, whatever it showed or will show; null where there was none. */
export function lastBiological(studio: Studio, steriliserId: string, zone: string): CivilDate | null {
  const tested = [...studio.cycle.values()]
    .filter(({ entry }) => entry.steriliserId === steriliserId && entry.biological !== "none")
    .map(({ entry }) => entry.atMs);
  return tested.length === 0 ? null : dateAt(Math.max(...tested), zone);
}

export const dayOf = (text: string | null): CivilDate | null => {
  const parsed = text === null ? null : parseDate(text);
  return parsed?.ok ? parsed.value : null;
};
