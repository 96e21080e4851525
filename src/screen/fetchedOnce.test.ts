import { describe, expect, it } from "vitest";
import { fetchedOnce } from "./fetchedOnce";

describe("a part that is fetched once", () => {
  it("is not here until it has come, and then at once", async () => {
    const part = fetchedOnce(async () => "ear");
    expect(part.now).toBeNull();
    await part.get();
    expect(part.now).toBe("ear");
  });

  it("is asked for once, however many wait for it", async () => {
    let times = 0;
    const part = fetchedOnce(async () => {
      times += 1;
    });
    await Promise.all([part.get(), part.get()]);
    await part.get();
    expect(times).toBe(1);
  });

  it("stays away for good where it could not be had: a screen that waits for it asks no second time", async () => {
    let times = 0;
    const part = fetchedOnce(() => {
      times += 1;
      return Promise.reject(new Error("no network"));
    });
    await expect(part.get()).rejects.toThrow("no network");
    await expect(part.get()).rejects.toThrow("no network");
    expect([times, part.now]).toEqual([1, null]);
  });
});
