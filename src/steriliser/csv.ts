/**
 * Reads the record of a cycle from CSV (RFC 4180; comma, semicolon or tab). Every column states its unit in its name,
 * and a pressure must say abs or gauge: the two differ by a whole atmosphere.
 */
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import { splitRows } from "../sums/csvRows";
import { fahrenheitToCelsius, type Reading, standardAtmosphereKPa } from "./reading";

export type CsvCode =
  | "empty"
  | "too-large"
  | "malformed"
  | "no-time-column"
  | "no-temperature-column"
  | "two-columns-for-one"
  | "pressure-kind-unknown"
  | "bad-value"
  | "time-not-increasing";

export type CycleRecord = { readonly readings: readonly Reading[]; readonly ignoredColumns: readonly string[] };

type Column = {
  readonly of: "time" | "temperature" | "pressure";
  readonly read: (value: number, atmosphereKPa: number) => number;
};

const kPaPerPsi = 6.894757293168;

/** Column names as written in the file, lower case, with spaces and brackets turned into underscores. */
const columns: Record<string, Column> = {
  time_ms: { of: "time", read: (v) => v },
  time_s: { of: "time", read: (v) => v * 1000 },
  time_min: { of: "time", read: (v) => v * 60_000 },
  temperature_c: { of: "temperature", read: (v) => v },
  temperature_f: { of: "temperature", read: fahrenheitToCelsius },
  pressure_kpa_abs: { of: "pressure", read: (v) => v },
  pressure_kpa_gauge: { of: "pressure", read: (v, atmosphere) => v + atmosphere },
  pressure_bar_abs: { of: "pressure", read: (v) => v * 100 },
  pressure_bar_gauge: { of: "pressure", read: (v, atmosphere) => v * 100 + atmosphere },
  pressure_psi_abs: { of: "pressure", read: (v) => v * kPaPerPsi },
  pressure_psi_gauge: { of: "pressure", read: (v, atmosphere) => v * kPaPerPsi + atmosphere },
};

/** What a steam steriliser can honestly show; anything beyond is a slip or another column. */
const sensible = { time: [0, 86_400_000], temperature: [-20, 200], pressure: [0, 1000] } as const;

const mostCharacters = 5_000_000;
const mostReadings = 100_000;

/**
 * @param text          header row and one row a reading, `time_s,temperature_c[,pressure_bar_gauge]`.
 * @param atmosphereKPa local air pressure, for gauge columns.
 * Refusals name the line. Columns that are not understood are ignored and named.
 */
export function parseCycleCsv(text: string, atmosphereKPa = standardAtmosphereKPa): Answer<CycleRecord, CsvCode> {
  if (text.length > mostCharacters) return refuse("too-large", (say) => say.steriliser.file.tooLarge);
  const table = splitRows(text);
  if (!table) return refuse("malformed", (say) => say.steriliser.file.notCsv);
  const [header, ...rows] = table.rows;
  if (!header || rows.length === 0) return refuse("empty", (say) => say.steriliser.file.empty);
  if (rows.length > mostReadings) return refuse("too-large", (say) => say.steriliser.file.tooMany);
  const placed = placeColumns(header);
  return placed.ok ? readRows(rows, placed.value, table.decimalComma, atmosphereKPa) : placed;
}

type Placed = {
  readonly at: Record<Column["of"], { index: number; column: Column } | null>;
  readonly ignored: readonly string[];
};

function placeColumns(header: readonly string[]): Answer<Placed, CsvCode> {
  const at: Placed["at"] = { time: null, temperature: null, pressure: null };
  const ignored: string[] = [];
  for (const [index, name] of header.entries()) {
    const key = name
      .trim()
      .toLowerCase()
      .replace(/°/g, "")
      .replace(/[\s()[\]/.-]+/g, "_")
      .replace(/_+$/, "");
    const column = Object.hasOwn(columns, key) ? columns[key] : undefined;
    if (!column) {
      if (/pressure/.test(key))
        return refuse("pressure-kind-unknown", (say) => say.steriliser.file.pressureKind(quoted(name)));
      ignored.push(name.trim());
    } else if (at[column.of])
      return refuse("two-columns-for-one", (say) => say.steriliser.file.second(quoted(name), column.of));
    else at[column.of] = { index, column };
  }
  if (!at.time) return refuse("no-time-column", (say) => say.steriliser.file.timeNeeded);
  if (!at.temperature) return refuse("no-temperature-column", (say) => say.steriliser.file.temperatureNeeded);
  return answer({ at, ignored });
}

function readRows(
  rows: readonly (readonly string[])[],
  { at, ignored }: Placed,
  comma: boolean,
  atmosphereKPa: number,
): Answer<CycleRecord, CsvCode> {
  const readings: Reading[] = [];
  for (const [index, row] of rows.entries()) {
    const line = index + 2;
    const values = { time: 0, temperature: 0, pressure: null as number | null };
    for (const of of ["time", "temperature", "pressure"] as const) {
      const place = at[of];
      if (!place) continue;
      const cell = row[place.index] ?? "";
      const value = readNumber(cell, comma);
      const converted = value === null ? Number.NaN : place.column.read(value, atmosphereKPa);
      const [low, high] = sensible[of];
      if (!(converted >= low && converted <= high))
        return refuse("bad-value", (say) => say.steriliser.file.badValue(line, quoted(cell), of));
      values[of] = converted;
    }
    const last = readings.at(-1);
    if (last && values.time <= last.tMs)
      return refuse("time-not-increasing", (say) => say.steriliser.file.timeBack(line));
    readings.push({ tMs: values.time, celsius: values.temperature, kPaAbs: values.pressure });
  }
  return answer({ readings, ignoredColumns: ignored });
}

function readNumber(cell: string, decimalComma: boolean): number | null {
  const text = decimalComma ? cell.trim().replace(",", ".") : cell.trim();
  return /^[+-]?\d{1,12}(\.\d{1,12})?$/.test(text) ? Number(text) : null;
}
