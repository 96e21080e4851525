import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { addressWords, commandIds } from "./phrases";
import { parse, spoken } from "./spoken";
import { phraseLanguages } from "./wording";

const anyAddressed = fc.record({ address: fc.constantFrom(...addressWords), command: fc.constantFrom(...commandIds) });
const anyLanguage = fc.constantFrom(...phraseLanguages);

describe("spoken phrases", () => {
  property.prop([anyAddressed, anyLanguage])("come back as what was asked, in any language", (asked, language) => {
    expect(parse(spoken(asked.address, asked.command, language))).toEqual(asked);
  });

  property.prop([anyAddressed, fc.constantFrom("  ", ". ", "!")])(
    "may be written with other case, spaces and stops",
    (asked, end) => {
      expect(parse(` ${spoken(asked.address, asked.command).toUpperCase().replace(" ", "  ")}${end}`)).toEqual(asked);
    },
  );

  property.prop([anyAddressed, fc.constantFrom("and", "so", "my")])(
    "are not heard inside a longer sentence",
    (asked, word) => {
      expect(parse(`${word} ${spoken(asked.address, asked.command)}`)).toBeNull();
    },
  );

  test("need their address word", () => {
    expect(parse("previous step")).toBeNull();
  });
});
