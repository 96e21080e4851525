import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { commandIds } from "./phrases";
import { type PieceInTheAir, sayingNow, stillInTheAir } from "./sayingNow";
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

describe("what of a sentence said in pieces is in the air", () => {
  const textsAfter = (...begun: readonly (readonly [string, number])[]) =>
    begun
      .reduce<readonly PieceInTheAir[]>((before, [text, nowMs]) => stillInTheAir(before, text, nowMs), [])
      .map(({ text }) => text);

  test("is the piece that sounds and the one that it followed", () => {
    expect(textsAfter(["You may say:", 0], ["completed", 900])).toEqual(["You may say:", "completed"]);
  });

  test("is no longer what ended a while ago", () => {
    expect(textsAfter(["You may say:", 0], ["completed", 900], ["undo the mistake", 1700])).toEqual([
      "completed",
      "undo the mistake",
    ]);
  });

  test("is still what ended just now, before a short piece", () => {
    expect(textsAfter(["previous", 0], ["step", 500], ["two", 900])).toEqual(["previous", "step", "two"]);
  });
});
