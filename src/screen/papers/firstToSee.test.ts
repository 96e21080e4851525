/** What was left unready stands on both records: on the one that left it, and on the one that began with it. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { sealedRecord } from "../../../tests/support/papers";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { FirstToSee } from "./FirstToSee";
import { paperOf } from "./paper";

const firstOn = async (carriedOver: string[]): Promise<string> => {
  const { record } = await sealedRecord(inputFor(smallProtocol, { carriedOver }));
  return renderToStaticMarkup(createElement(FirstToSee, { paper: paperOf(record) }));
};

describe("the first thing on the paper", () => {
  it("says what the session before had left unready, by name", async () => {
    const words = "It began with what the session before had left unready: lamp, chair.";
    expect(await firstOn(["lamp", "chair"])).toContain(words);
    expect(await firstOn([])).not.toContain("It began with");
  });
});
