/** A breach is told in each language that the companion speaks: the rule, its source, the way to it, and why nothing is proved. */
import { describe, expect, it } from "vitest";
import { longProtocol } from "../../tests/bench/longProtocol";
import { spokenLanguages } from "../announcements/languages";
import type { Protocol } from "../session/protocol";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { checkProtocol } from "./checkProtocol";
import { ruleIds } from "./rules";
import { storyOf, whyOf } from "./story";
import type { Why } from "./why";
import { checkWordsFor } from "./words";
import { checkEn } from "./words/en";
import { checkEs } from "./words/es";

const drop = (p: Protocol, id: string): Protocol => ({ ...p, breakdown: p.breakdown.filter((s) => s.id !== id) });
const told = (protocol: Protocol, w = checkEs): string[] => {
  const found = checkProtocol(protocol, { slips: false });
  const [first] = found.verdict === "breach" ? found.breaches : [];
  return first ? storyOf(w, protocol, first) : [];
};

describe("a story", () => {
  it("is told in Spanish, with the protocol's own Spanish", () => {
    const story = told(drop(cartridgeMachine, "lastHands"));
    expect(story.at(-2)).toBe("Cierras la sesión. Tus manos no están lavadas.");
    expect(story.at(-1)).toBe(
      "Regla: Quitarse los guantes y lavarse las manos es lo último. Fuente: 29 CFR 1910.1030(d)(2)(v); OMS 2009.",
    );
    expect(story[0]).toContain("«Quítate anillos, reloj y pulseras.» (jewelleryOff)");
  });

  it("falls back to English words of a protocol that has no Spanish ones", () => {
    expect(told(drop(longProtocol(20, 2), "lastHands"))[0]).toContain("«Do firstHands.» (firstHands)");
  });

  it("is the same way in each language", () => {
    const broken = drop(cartridgeMachine, "uncoverAll");
    expect(told(broken, checkEn)).toHaveLength(told(broken).length);
  });
});

describe("the words of a check", () => {
  const whys: readonly Why[] = [
    { code: "tooMany", rule: "handsLast", names: ["lamp", "the sharps"], most: 9 },
    { code: "notFollowed", rule: "handsLast" },
    { code: "leftOpen", rule: "handsLast", names: [] },
    { code: "notHeldBack", step: "begin", finding: "usedUnsterile" },
    { code: "onlyAPart" },
    { code: "stopped" },
    { code: "notStarted" },
  ];
  it.each(spokenLanguages)("say why nothing is proved in whole sentences: %s", (language) => {
    const said = whys.map((why) => whyOf(checkWordsFor(language), cartridgeMachine, why));
    expect(said.filter((words) => !/^["«A-Z].+\.$/.test(words))).toEqual([]);
    expect(new Set(said).size).toBe(whys.length);
  });

  it("name things as the language does", () => {
    const [many] = whys as [Why];
    expect(whyOf(checkEs, cartridgeMachine, many)).toContain("lámpara, los punzantes");
    expect(whyOf(checkEs, cartridgeMachine, whys[2] as Why)).toContain("las manos");
  });

  it("say each rule in words of its own, with the same citations", () => {
    const figures = (source: string) => (source.match(/\d+(?:\([a-zA-Z0-9]+\))*/g) ?? []).toSorted();
    const differ = ruleIds.filter(
      (id) => figures(checkEs.rules[id].source).join() !== figures(checkEn.rules[id].source).join(),
    );
    expect(differ).toEqual([]);
    expect(ruleIds.filter((id) => checkEs.rules[id].words === checkEn.rules[id].words)).toEqual([]);
  });
});
