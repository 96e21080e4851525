/** One moment of a steriliser cycle, in the units everything here works in. */
export type Reading = {
  /** From the start of the record, ms, strictly increasing. */
  readonly tMs: number;
  readonly celsius: number;
  /** Absolute, kPa; null where the machine wrote none. Gauge pressure is turned into absolute on the way in. */
  readonly kPaAbs: number | null;
};

/** Standard atmosphere, to turn gauge pressure into absolute where the studio gives no local value. */
export const standardAtmosphereKPa = 101.325;

export function fahrenheitToCelsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}
