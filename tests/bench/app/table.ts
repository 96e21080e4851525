/** One table for all that is measured of the app: what, each figure, and what it is held against. */

export interface Row {
  readonly what: string;
  readonly figures: readonly string[];
}

export const kb = (bytes: number): string => `${(bytes / 1024).toFixed(1)} KB`;
export const mb = (bytes: number): string => `${(bytes / 1024 / 1024).toFixed(1)} MB`;
export const ms = (value: number): string => `${value.toFixed(0)} ms`;
export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

export function quantile(values: readonly number[], q: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * q))] ?? Number.NaN;
}

export function print(title: string, heads: readonly string[], rows: readonly Row[]): void {
  console.log(`\n${title.padEnd(52)}${heads.map((head) => head.padStart(14)).join("")}`);
  for (const { what, figures } of rows)
    console.log(`${what.padEnd(52)}${figures.map((figure) => figure.padStart(14)).join("")}`);
}
