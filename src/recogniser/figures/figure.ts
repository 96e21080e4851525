/** One measured figure with its interval, and the bar it has to pass: a row of the tables of `bench:voice` and `gloveside hear`. */

export interface Figure {
  readonly what: string;
  /** What was counted: "560 clips, 14 speakers" or "0.5 h". */
  readonly of: string;
  /** In `unit`; NaN where nothing was measured. `low` and `high` hold it with 95 %; a bound has no other side. */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: "%" | "/h" | "ms" | "MB" | "";
  readonly bar: Bar | null;
  /** The same by another recogniser on the same sound, where there is one. */
  readonly beside: string | null;
}

/** At least, or at most: compared with the value, or with the upper bound where that is what was asked for. */
export interface Bar {
  readonly sense: "least" | "most";
  readonly value: number;
  readonly on: "value" | "high";
}

export const least = (value: number): Bar => ({ sense: "least", value, on: "value" });
export const most = (value: number, on: Bar["on"] = "value"): Bar => ({ sense: "most", value, on });

/** "not shown": nothing speaks against it, but too little was heard for the bound to reach the bar. */
export type Verdict = "met" | "missed" | "not shown";

/** Null where there is no bar, or nothing to compare with it. */
export function verdictOf({ value, high, bar }: Figure): Verdict | null {
  if (bar === null || Number.isNaN(value)) return null;
  const holds = (measured: number) => (bar.sense === "least" ? measured >= bar.value : measured <= bar.value);
  if (!holds(value)) return "missed";
  return bar.on === "value" || (high !== null && holds(high)) ? "met" : "not shown";
}

const digits: Readonly<Record<Figure["unit"], number>> = { "%": 1, "/h": 2, ms: 0, MB: 2, "": 0 };

function measuredIn({ value, low, high, unit }: Figure): string {
  const shown = (number: number) => number.toFixed(digits[unit]);
  const gap = unit === "" || unit === "/h" ? unit : ` ${unit}`;
  if (Number.isNaN(value)) return "not measured";
  if (low !== null && high !== null) return `${shown(value)}${gap} (${shown(low)}–${shown(high)})`;
  return high === null ? `${shown(value)}${gap}` : `${shown(value)}${gap} (≤ ${shown(high)})`;
}

function barOf(figure: Figure): string {
  const { bar, unit } = figure;
  if (bar === null) return "";
  const verdict = verdictOf(figure);
  const said = verdict === null ? "" : ` ${verdict === "missed" ? "MISSED" : verdict}`;
  return `${bar.sense === "least" ? "≥" : "≤"} ${bar.value}${unit === "" || unit === "/h" ? unit : ` ${unit}`}${said}`;
}

/** A Markdown table, its columns in line. */
export function figureTable(figures: readonly Figure[]): readonly string[] {
  const hasOther = figures.some(({ beside }) => beside !== null);
  const rows = [
    ["what", "of", "measured (95 %)", "bar", ...(hasOther ? ["PocketSphinx"] : [])],
    ...figures.map((one) => [one.what, one.of, measuredIn(one), barOf(one), ...(hasOther ? [one.beside ?? ""] : [])]),
  ];
  const widths = rows[0]?.map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0))) ?? [];
  const lines = rows.map((row) => `| ${row.map((cell, c) => cell.padEnd(widths[c] ?? 0)).join(" | ")} |`);
  return [lines[0] ?? "", `|${widths.map((width) => "-".repeat(width + 2)).join("|")}|`, ...lines.slice(1)];
}
