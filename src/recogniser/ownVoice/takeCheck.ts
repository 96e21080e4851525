/** Whether a recording is good enough to learn from, and where the phrase lies in it. By energy alone. Pure. */

export type TakeTrouble = "clipped" | "tooQuiet" | "cutOff" | "other" | "nothing";
export type CheckedTake =
  | { readonly ok: true; readonly startMs: number; readonly endMs: number }
  | { readonly ok: false; readonly trouble: TakeTrouble };

const frameMs = 20;
const clipAt = 0.985;
const mostClipped = 4;
const quietestSpeechDb = -50;
/** Speech stands so far above the quiet of its recording. */
const aboveRoomDb = 8;
const leastMs = 250;
const longestMs = 3500;
/** Sound this near to either end means that the phrase goes on beyond it. */
const edgeMs = 60;

/** @param sound mono, −1..1, with some quiet before and after the phrase. */
export function checkTake(sound: Float32Array, rateHz: number): CheckedTake {
  const no = (trouble: TakeTrouble) => ({ ok: false, trouble }) as const;
  if (sound.filter((x) => Math.abs(x) >= clipAt).length > mostClipped) return no("clipped");
  const frame = Math.round((rateHz * frameMs) / 1000);
  const levels = Array.from({ length: Math.floor(sound.length / frame) }, (_, n) =>
    levelDb(sound.subarray(n * frame, (n + 1) * frame)),
  );
  const sorted = levels.toSorted((a, b) => a - b);
  const room = sorted[Math.floor(0.1 * sorted.length)] ?? 0;
  const top = sorted[Math.floor(0.97 * sorted.length)] ?? Number.NEGATIVE_INFINITY;
  if (top - room < aboveRoomDb) return no("nothing");
  const isLoud = (db: number) => db > Math.max(room + 6, top - 28);
  const first = levels.findIndex(isLoud);
  const last = levels.findLastIndex(isLoud);
  const [startMs, endMs] = [first * frameMs, (last + 1) * frameMs];
  if (endMs - startMs < leastMs) return no("nothing");
  if (top < quietestSpeechDb) return no("tooQuiet");
  if (startMs < edgeMs || endMs > (sound.length * 1000) / rateHz - edgeMs || endMs - startMs > longestMs)
    return no("cutOff");
  return { ok: true, startMs, endMs };
}

const levelDb = (frame: Float32Array): number =>
  10 * Math.log10(frame.reduce((sum, x) => sum + x * x, 0) / Math.max(1, frame.length) + 1e-10);
