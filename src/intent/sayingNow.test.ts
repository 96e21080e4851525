import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { commandIds } from "./phrases";
import { sayingNow } from "./sayingNow";
import { phraseLanguages, wordings } from "./wording";

describe("the commands that the companion's own words could be taken for", () => {
  test("are those whose words it says", () => {
    expect(sayingNow("Did you say: seal the record?", "en")).toContain("close");
    expect(sayingNow("Did you say: seal the record?", "en")).not.toContain("done");
  });

  test("are those of the language that it speaks", () => {
    expect(sayingNow("¿Has dicho: sella el registro?", "es")).toEqual(["close"]);
    expect(sayingNow("¿Has dicho: sella el registro?", "en")).toEqual([]);
  });

  test("are none for a sentence that shares no words with any", () => {
    expect(sayingNow("Wash your hands for forty seconds.", "en")).toEqual([]);
    expect(sayingNow("Lávate las manos cuarenta segundos.", "es")).toEqual([]);
  });

  property.prop([
    fc.constantFrom(...phraseLanguages),
    fc.constantFrom(...commandIds),
    fc.constantFrom("", "Say: station ", "Di: estación "),
    fc.constantFrom("?", ".", "!"),
  ])("always hold the command whose phrase it says, whatever stands around it", (language, command, before, after) => {
    expect(sayingNow(`${before}${wordings[language].commands[command]}${after}`, language)).toContain(command);
  });
});
