import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { commandIds, commands } from "./phrases";
import { sayingNow } from "./sayingNow";

describe("the commands that the companion's own words could be taken for", () => {
  test("are those whose words it says", () => {
    expect(sayingNow("Did you say: seal the record?")).toContain("close");
    expect(sayingNow("Did you say: seal the record?")).not.toContain("done");
  });

  test("are none for a sentence that shares no words with any", () => {
    expect(sayingNow("Wash your hands for forty seconds.")).toEqual([]);
  });

  property.prop([
    fc.constantFrom(...commandIds),
    fc.constantFrom("", "Say: station ", "Did you say: "),
    fc.constantFrom("?", ".", "!"),
  ])("always hold the command whose phrase it says, whatever stands around it", (command, before, after) => {
    expect(sayingNow(`${before}${commands[command]}${after}`)).toContain(command);
  });
});
