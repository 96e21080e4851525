import { describe, expect, test } from "vitest";
import { seededRandom } from "../../rehearsal/random";
import { checkTake } from "./takeCheck";

const rateHz = 16_000;
const ms = (count: number) => (count * rateHz) / 1000;
/** A room, and a tone in it from one time to another. */
function recording(lengthMs: number, fromMs: number, toMs: number, size = 0.2): Float32Array {
  const random = seededRandom(4);
  return Float32Array.from({ length: ms(lengthMs) }, (_, n) => {
    const speaks = n >= ms(fromMs) && n < ms(toMs);
    return 0.0005 * (random() - 0.5) + (speaks ? size * Math.sin(n / 4) : 0);
  });
}

describe("a take", () => {
  test("is good when the whole phrase stands in it, and tells where", () => {
    const checked = checkTake(recording(2400, 400, 1500), rateHz);
    expect(checked).toMatchObject({ ok: true });
    if (!checked.ok) return;
    expect(checked.startMs).toBeCloseTo(400, -2);
    expect(checked.endMs).toBeCloseTo(1500, -2);
  });

  test("is refused when it was too loud, too quiet or nothing", () => {
    expect(checkTake(recording(2400, 400, 1500, 1.5), rateHz)).toEqual({ ok: false, trouble: "clipped" });
    expect(checkTake(recording(2400, 400, 1500, 0.003), rateHz)).toEqual({ ok: false, trouble: "tooQuiet" });
    expect(checkTake(recording(2400, 0, 0), rateHz)).toEqual({ ok: false, trouble: "nothing" });
    expect(checkTake(recording(2400, 400, 520), rateHz)).toEqual({ ok: false, trouble: "nothing" });
  });

  test("is refused when the phrase begins before it or goes on after it", () => {
    expect(checkTake(recording(2400, 0, 1500), rateHz)).toEqual({ ok: false, trouble: "cutOff" });
    expect(checkTake(recording(2400, 900, 2400), rateHz)).toEqual({ ok: false, trouble: "cutOff" });
    expect(checkTake(recording(6000, 400, 5000), rateHz)).toEqual({ ok: false, trouble: "cutOff" });
  });
});
