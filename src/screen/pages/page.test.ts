import { describe, expect, it } from "vitest";
import { addressOf, pageAt, pageGroups, pageIds, pagesOf } from "./page";

describe("the page in the address", () => {
  it("is the one that is named, with what follows the slash", () => {
    expect(pageAt("#mixing")).toEqual({ id: "mixing", rest: null });
    expect(pageAt(addressOf("shelf", "lot 4/7 ü"))).toEqual({ id: "shelf", rest: "lot 4/7 ü" });
  });

  it("is the prepare screen where nothing, or nothing known, is named", () => {
    expect(pageAt("")).toEqual({ id: "prepare", rest: null });
    expect(pageAt("#elsewhere/x")).toEqual({ id: "prepare", rest: null });
  });

  it("keeps the page where the rest was typed wrongly", () => {
    expect(pageAt("#shelf/%E0%A4%A")).toEqual({ id: "shelf", rest: null });
  });

  it("is listed in exactly one group", () => {
    expect(pageGroups.flatMap(pagesOf).toSorted()).toEqual([...pageIds].toSorted());
  });
});
