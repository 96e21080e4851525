import { describe, expect, it } from "vitest";
import { pseudo, pseudoText } from "./pseudo";

describe("the language nobody speaks", () => {
  it("is two fifths longer, between brackets", () => {
    const text = pseudoText("Start the session");
    expect(text).toMatch(/^⟦Stárt thë sëssïön .*⟧$/);
    expect(text.length).toBeGreaterThanOrEqual(1.4 * "Start the session".length);
  });

  it("leaves figures alone and reaches what functions and lists say", () => {
    const book = pseudo({ at: 3, of: (n: number) => `${n} steps`, list: ["one"], unit: "100 %" });
    expect(book.of(2)).toMatch(/^⟦2 stëps/);
    expect(book.list[0]).toMatch(/^⟦önë/);
    expect([book.at, book.unit]).toEqual([3, "100 %"]);
  });
});
