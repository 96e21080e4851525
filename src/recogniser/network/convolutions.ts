/**
 * The stack of convolutions as a stream of rows. A row is one instant: positions along pitch × channels. Each stage
 * keeps only the rows it still needs, so a new row costs its own work and nothing is computed twice; the answers are
 * those of the whole stack run over the last 76 rows, because the stack has no padding in time.
 *
 *   row of 32 mels ─▶ [across both 3×3] ─▶ [pitch 1×3] ─▶ [time 3×1] ─▶ [pool] ─▶ … ─▶ row of features, one position
 */
import type { Weights, Workshop } from "./product";

/** Takes a row and gives the row it completes, or null while it waits for more. The row given is reused: copy to keep. */
export interface Stage {
  readonly positions: number;
  readonly channels: number;
  push(row: Float32Array): Float32Array | null;
  /** Rows taken since a fresh start, as far as it matters; what else a stage remembers lies in the workshop. */
  seen: number;
}

/** 1×3 along pitch, a column of zeros on each side. Weights: outputs × (3 · channels), pitch-major. */
export function alongPitch(shop: Workshop, positions: number, channels: number, weights: Weights): Stage {
  const padded = shop.floats((positions + 2) * channels);
  const out = shop.floats(positions * weights.outputs);
  return {
    positions,
    channels: weights.outputs,
    seen: 0,
    push(row) {
      padded.set(row, channels);
      shop.product(padded, channels, positions, weights, out);
      shop.rectify(out);
      return out;
    },
  };
}

/** 3×1 along time. Weights: outputs × (3 · channels), oldest instant first. `last` leaves the rectifier out. */
export function alongTime(shop: Workshop, positions: number, channels: number, weights: Weights, last = false): Stage {
  const held = shop.floats(positions * 3 * channels);
  const out = shop.floats(positions * weights.outputs);
  return {
    positions,
    channels: weights.outputs,
    seen: 0,
    push(row) {
      for (let p = 0; p < positions; p++) {
        const at = p * 3 * channels;
        held.copyWithin(at, at + channels, at + 3 * channels);
        held.set(row.subarray(p * channels, (p + 1) * channels), at + 2 * channels);
      }
      if (++this.seen < 3) return null;
      shop.product(held, 3 * channels, positions, weights, out);
      if (!last) shop.rectify(out);
      return out;
    },
  };
}

/** 3×3 over one channel: the first layer. Weights: outputs × 9, time-major. */
export function acrossBoth(shop: Workshop, positions: number, weights: Weights): Stage {
  const held = shop.floats(3 * (positions + 2));
  const windows = shop.floats(positions * 9);
  const out = shop.floats(positions * weights.outputs);
  const width = positions + 2;
  return {
    positions,
    channels: weights.outputs,
    seen: 0,
    push(row) {
      held.copyWithin(0, width);
      held.set(row, 2 * width + 1);
      if (++this.seen < 3) return null;
      for (let p = 0; p < positions; p++) {
        for (let t = 0; t < 3; t++) windows.set(held.subarray(t * width + p, t * width + p + 3), p * 9 + t * 3);
      }
      shop.product(windows, 9, positions, weights, out);
      shop.rectify(out);
      return out;
    },
  };
}

/** The larger of each pair along pitch and, with `overTime`, of each pair of instants. */
export function pool(shop: Workshop, positions: number, channels: number, overTime: boolean): Stage {
  const out = shop.floats((positions / 2) * channels);
  return {
    positions: positions / 2,
    channels,
    seen: 0,
    push(row) {
      const isSecond = overTime && this.seen++ % 2 === 1;
      for (let p = 0; p < positions / 2; p++) {
        for (let c = 0; c < channels; c++) {
          const i = p * channels + c;
          const best = Math.max(row[2 * p * channels + c] as number, row[(2 * p + 1) * channels + c] as number);
          out[i] = isSecond ? Math.max(best, out[i] as number) : best;
        }
      }
      return isSecond || !overTime ? out : null;
    },
  };
}

/** Pushes a row through the stages one after another; null when one of them still waits. */
export function through(stages: readonly Stage[], row: Float32Array): Float32Array | null {
  let x: Float32Array | null = row;
  for (const stage of stages) {
    x = stage.push(x);
    if (x === null) return null;
  }
  return x;
}
