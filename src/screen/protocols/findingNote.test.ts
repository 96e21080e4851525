/** What is found stands beside the step in the language of the screen: rule, source and story. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import type { SpokenLanguage } from "../../announcements/languages";
import { checkProtocol } from "../../check/checkProtocol";
import { findingsOf } from "../../drafting/findings";
import type { Protocol } from "../../session/protocol";
import { conventionBooth } from "../../session/protocols/conventionBooth";
import { type Shared, SharedContext } from "../useModel";
import { wordsFor } from "../words";
import { FindingNote } from "./FindingNote";

const broken: Protocol = {
  ...conventionBooth,
  breakdown: conventionBooth.breakdown.filter(({ id }) => !id.startsWith("sinkLast") && id !== "lastHands"),
};
const [finding] = findingsOf(checkProtocol(broken, { slips: false }), broken).elsewhere;

function shown(language: SpokenLanguage): string {
  const shared = { words: wordsFor(language), language } as Shared;
  const note = finding ? createElement(FindingNote, { finding }) : null;
  return renderToStaticMarkup(createElement(SharedContext, { value: shared }, note));
}

describe("a finding", () => {
  it("is told in English", () => {
    const text = shown("en");
    expect(text).toContain("<b>Gloves off and hands washed are the last of it.</b>");
    expect(text).toContain("You close the session. Your hands are not washed.");
    expect(text).toContain("Source: 29 CFR 1910.1030(d)(2)(v); WHO 2009");
  });

  it("and in Spanish", () => {
    const text = shown("es");
    expect(text).toContain("<b>Quitarse los guantes y lavarse las manos es lo último.</b>");
    expect(text).toContain("Cierras la sesión. Tus manos no están lavadas.");
    expect(text).toContain("Fuente: 29 CFR 1910.1030(d)(2)(v); OMS 2009");
    expect(text).not.toMatch(/You |Source|Rule/);
  });
});
