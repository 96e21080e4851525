/** Findings of the real checker, sorted to the step that asks, to what happened, or to the close. */
import { describe, expect, it } from "vitest";
import { provedSmall } from "../../tests/journeys/support/provedSmall";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { checkProtocol } from "../check/checkProtocol";
import type { Protocol } from "../session/protocol";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { applyEdit, type Edit } from "./edit";
import { findingsOf } from "./findings";

const found = (protocol: Protocol) => findingsOf(checkProtocol(protocol));
function changed(protocol: Protocol, edit: Edit): Protocol {
  const edited = applyEdit(protocol, edit);
  return edited.ok ? edited.protocol : expect.fail(edited.trouble.at);
}

describe("what is found", () => {
  it("stands at the step that asks for it, with rule, source and story", () => {
    const { steps } = found(changed(cartridgeMachine, { do: "removeStep", step: "firstHands" }));
    const [finding] = [...steps.values()].flat().filter(({ rule }) => rule === "handsBeforeGloves");
    expect(finding).toMatchObject({ source: "WHO 2009 hand hygiene; CDC glove use" });
    expect(finding?.story.at(-1)).toMatch(/^Now it asks: /);
  });

  it("is told once for each rule at each step", () => {
    const { steps } = found(smallProtocol);
    const told = steps.get("coverBoth")?.map(({ rule }) => rule) ?? [];
    expect(told).toContain("disinfectedBeforeCovered");
    expect(new Set(told).size).toBe(told.length);
  });

  it("at the close stands at no step", () => {
    const { elsewhere } = found(changed(provedSmall, { do: "removeStep", step: "cupAway" }));
    expect(elsewhere.map(({ rule }) => rule)).toEqual(["singleUseDiscarded"]);
  });

  it("is nothing where the protocol is proved, and a reason where it is not proved", () => {
    expect(found(provedSmall)).toMatchObject({ count: 0, why: null });
    expect(findingsOf({ verdict: "notProved", why: "too many", states: 1, ms: 1 })).toMatchObject({
      count: 0,
      why: "too many",
    });
  });
});
