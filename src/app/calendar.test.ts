import { describe, expect, it } from "vitest";
import { todayIn } from "./calendar";

const newYearInTokyo = Date.UTC(2026, 11, 31, 15, 0, 0);

describe("today at the station", () => {
  it("is the day of the station's zone, not of Greenwich", () => {
    expect(todayIn("Asia/Tokyo", newYearInTokyo)).toBe("2027-01-01");
    expect(todayIn("America/Los_Angeles", newYearInTokyo)).toBe("2026-12-31");
  });
});
