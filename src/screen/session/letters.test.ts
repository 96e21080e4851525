import { expect, it } from "vitest";
import { everyStep } from "../../session/protocol";
import { bundledProtocols } from "../../session/protocols";
import { lettersFor, linesOf } from "./letters";

it("gives every step of the bundled protocols, in every language, letters to be read from two metres", () => {
  const shown = bundledProtocols.flatMap((protocol) =>
    everyStep(protocol).flatMap(({ step }) => Object.values(step.show).filter((text) => text !== undefined)),
  );
  expect(shown.length).toBeGreaterThan(300);
  expect(shown.filter((text) => lettersFor(text) === "long")).toEqual([]);
});

it("gives a word that is wider than an upright screen smaller ones, and a long text of a studio's own yet smaller", () => {
  expect(lettersFor("Rings, watch, bracelets off")).toBe("usual");
  expect(lettersFor("Consentimiento firmado")).toBe("longWord");
  expect(lettersFor("Everything that stood on the second shelf, wiped")).toBe("long");
});

it("counts the lines of a text with its words whole", () => {
  expect(linesOf("Gloves off", "shown")).toBe(1);
  expect(linesOf("Wash at shared sink", "shown")).toBe(2);
  expect(linesOf("Consentimiento firmado", "shown")).toBe(2);
});
