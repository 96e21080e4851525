/**
 * Contact times as a table, RFC 4180: one row a surface, with the time its label asks for, the time watched in the run
 * that counts, and how that ended. Runs before it, which never add up, stand in a cell of their own.
 */
import type { Summary } from "../log";
import { csv } from "./csv";
import type { RecordFile } from "./recordFile";
import { summaryBy } from "./replay/replay";

export type ClockRun = Summary["wetClocks"][number];
export type SurfaceRow = { readonly surface: string; readonly counts: ClockRun; readonly before: readonly ClockRun[] };

/** The last run of each surface that was not taken back, in the order the surfaces were first wet. */
export function surfaceRows(wetClocks: readonly ClockRun[]): readonly SurfaceRow[] {
  const said = wetClocks.filter((run) => run.ended !== "takenBack");
  return [...new Set(said.map((run) => run.surface))].flatMap((surface) => {
    const runs = said.filter((run) => run.surface === surface);
    const counts = runs.at(-1);
    return counts ? [{ surface, counts, before: runs.slice(0, -1) }] : [];
  });
}

const columns = ["session", "station", "surface", "product", "began", "n", "neededSec", "watchedSec", "ended"] as const;

/** @param record sealed or not; an unfinished one is added up as far as it goes. */
export function surfacesCsv({ header, entries, closing }: Pick<RecordFile, "header" | "entries" | "closing">): string {
  const { input, session, rules } = header;
  const { wetClocks } = closing?.summary ?? summaryBy(rules, input, entries);
  const rows = surfaceRows(wetClocks).map(({ surface, counts, before }) => {
    const { n, product, neededMs, creditedMs, ended, gaps } = counts;
    const name = input.protocol.items.find((item) => item.id === surface)?.name.en ?? surface;
    const label = input.labels[product]?.name.en ?? product;
    const at = entries[n - 1]?.at ?? "";
    const earlier = before.map((run) => `${run.ended} at ${run.creditedMs / 1000} s`).join("; ");
    return [session, input.station, name, label, at, n, neededMs / 1000, creditedMs / 1000, ended, gaps, earlier];
  });
  return csv([[...columns, "gaps", "earlierRuns"], ...rows]);
}
