/** The drawing of a cycle as plain geometry: the curve, the band, the hold. The screen only turns it into SVG. */
import type { CycleVerdict } from "./judge";
import { sayVerdict } from "./judge";
import type { Reading } from "./reading";

export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type Tick = { readonly at: number; readonly label: string };

export type CyclePlot = {
  readonly width: number;
  readonly height: number;
  /** "x,y x,y ..." for a polyline. */
  readonly curve: string;
  readonly band: Box;
  /** null where the band was never reached. */
  readonly hold: Box | null;
  /** Where the stay was broken. */
  readonly breaks: readonly { readonly x: number; readonly label: string }[];
  readonly timeTicks: readonly Tick[];
  readonly temperatureTicks: readonly Tick[];
  /** The same in words, for a screen reader. */
  readonly description: string;
};

/** @returns null for fewer than two readings: there is nothing to draw. y grows downwards, as in SVG. */
export function plotCycle(readings: readonly Reading[], v: CycleVerdict, width = 640, height = 320): CyclePlot | null {
  const first = readings[0];
  const last = readings.at(-1);
  if (!first || !last || readings.length < 2) return null;
  const top = v.band.highC ?? v.band.lowC + 5;
  const hottest = readings.reduce((most, r) => Math.max(most, r.celsius), top) + 2;
  const coolest = readings.reduce((least, r) => Math.min(least, r.celsius), v.band.lowC) - 2;
  const x = (tMs: number) => round(((tMs - first.tMs) / (last.tMs - first.tMs)) * width);
  const y = (celsius: number) => round(((hottest - celsius) / (hottest - coolest)) * height);
  const bandTop = y(v.band.highC ?? hottest);
  const bandHeight = round(y(v.band.lowC) - bandTop);
  const label = { below: "fell below the band", above: "rose above the band", gap: "no readings" };
  return {
    width,
    height,
    curve: readings.map((r) => `${x(r.tMs)},${y(r.celsius)}`).join(" "),
    band: { x: 0, y: bandTop, width, height: bandHeight },
    hold: v.hold && {
      x: x(v.hold.fromMs),
      y: bandTop,
      width: round(x(v.hold.toMs) - x(v.hold.fromMs)),
      height: bandHeight,
    },
    breaks: v.breaks.map((b) => ({ x: x(b.atMs), label: label[b.kind] })),
    timeTicks: ticks(first.tMs / 60_000, last.tMs / 60_000).map((minute) => ({
      at: x(minute * 60_000),
      label: `${minute} min`,
    })),
    temperatureTicks: ticks(coolest, hottest).map((celsius) => ({ at: y(celsius), label: `${celsius} °C` })),
    description: sayVerdict(v),
  };
}

/** Round numbers between two ends, at most about eight. */
function ticks(from: number, to: number): readonly number[] {
  const rough = (to - from) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((s) => s * power >= rough) ?? 10) * power;
  const list: number[] = [];
  for (let k = Math.ceil(from / step); k * step <= to; k += 1) list.push(Number((k * step).toPrecision(12)));
  return list;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
