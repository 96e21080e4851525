/**
 * Contact times as a table, RFC 4180: one row a surface, with the time its label asks for, the time watched in the run
 * that counts, and how that ended. Runs before it, which never add up, stand in a cell of their own.
 */
import type { Summary } from "../log";
import { csv } from "./csv";
import type { RecordFile } from "./recordFile";
import { summaryBy } from "./replay/replay";

type ClockRun = Summary["wetClocks"][number];
export type SurfaceRow = { readonly surface: string; readonly counts: ClockRun; readonly before: readonly ClockRun[] };

/**
 * Each time a surface was to be disinfected: the run that ended it, or the last try, with the tries before it that do not
 * count. A surface that was made ready in the set-up and again in the breakdown stands there twice.
 */
export function wettings(wetClocks: readonly ClockRun[]): readonly SurfaceRow[] {
  const rows: SurfaceRow[] = [];
  const tries = new Map<string, ClockRun[]>();
  for (const run of wetClocks) {
    if (run.ended === "takenBack") continue;
    const so = [...(tries.get(run.surface) ?? []), run];
    tries.set(run.surface, run.ended === "ready" ? [] : so);
    if (run.ended === "ready") rows.push({ surface: run.surface, counts: run, before: so.slice(0, -1) });
  }
  for (const [surface, so] of tries) {
    const counts = so.at(-1);
    if (counts) rows.push({ surface, counts, before: so.slice(0, -1) });
  }
  return rows.sort((a, b) => a.counts.n - b.counts.n);
}

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
