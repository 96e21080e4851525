import { describe, expect, it } from "vitest";
import { started, type WetClock } from "../../session/wetClock";
import { faceOf, minutesSeconds } from "./clockFace";

const clock = (change: Partial<WetClock> = {}): WetClock => ({
  ...started({ surface: "chair", product: "spray", neededMs: 180_000, reapplyWithinMs: 120_000 }),
  ...change,
});

describe("a wet clock on the screen", () => {
  it("runs on between facts with the time that was watched", () => {
    expect(faceOf(clock({ creditedMs: 60_000 }), 30_000)).toMatchObject({
      face: "counting",
      left: "1:30",
      filled: 0.5,
    });
  });

  it("never shows the time as up before that is kept", () => {
    expect(faceOf(clock({ creditedMs: 179_000 }), 5_000)).toMatchObject({ face: "counting", left: "0:01" });
  });

  it("rounds what is left up, so that a wait shown is never too short", () => {
    expect(minutesSeconds(60_001)).toBe("1:01");
  });

  it("stands still while it is doubtful, whatever time goes by", () => {
    const doubtful = clock({ creditedMs: 60_000, state: "doubtful" });
    expect(faceOf(doubtful, 30_000)).toMatchObject({ face: "doubtful", left: "2:00" });
  });

  it("shows the whole time again when the surface is dry", () => {
    expect(faceOf(clock({ state: "dry" }), 0)).toMatchObject({ face: "dry", left: "3:00", filled: 0 });
  });

  it("asks for more product by a face of its own", () => {
    expect(faceOf(clock({ creditedMs: 100_000, reapplyAsked: true }), 0).face).toBe("reapply");
  });

  it("shows no time once it is full", () => {
    expect(faceOf(clock({ creditedMs: 180_000, state: "timeUp" }), 0)).toMatchObject({ left: null, filled: 1 });
  });
});
