import { describe, expect, it } from "vitest";
import { firstSettings } from "./settings";

describe("the language of a device that was never asked", () => {
  it("is the first of its own that we speak", () => {
    expect(firstSettings(["ca-ES", "es-MX", "en-US"]).language).toBe("es");
    expect(firstSettings(["en-GB", "es"]).language).toBe("en");
  });

  it("is English where we speak none of them", () => {
    expect(firstSettings(["ja-JP"])).toEqual({ language: "en", theme: "device" });
    expect(firstSettings([]).language).toBe("en");
  });
});
