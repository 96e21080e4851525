/** Which load a class of cycle may carry. */
import { describe, expect, it } from "vitest";
import { checkLoad, loadKinds } from "./load";

describe("class of cycle against load (EN 13060, from memory)", () => {
  it("lets class B take everything", () => {
    expect(checkLoad("B", loadKinds)).toMatchObject({ ok: true });
  });

  it.each(["wrapped-solid", "naked-hollow", "wrapped-hollow", "porous"] as const)(
    "refuses %s in a class N cycle",
    (kind) => {
      expect(checkLoad("N", ["naked-solid", kind])).toMatchObject({ ok: false, code: "load-not-for-class" });
    },
  );

  it("lets class S take only what its maker states", () => {
    expect(checkLoad("S", ["wrapped-solid"], ["wrapped-solid"])).toMatchObject({ ok: true });
    expect(checkLoad("S", ["wrapped-hollow"], ["wrapped-solid"])).toMatchObject({ ok: false });
    expect(checkLoad("N", ["wrapped-solid"], ["wrapped-solid"])).toMatchObject({ ok: false });
  });

  it("asks what was loaded", () => {
    expect(checkLoad("B", [])).toMatchObject({ code: "empty-load" });
  });
});
