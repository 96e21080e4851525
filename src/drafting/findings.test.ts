/** Findings of the real checker, sorted to the step that asks, to what happened, or to the close. */
import { describe, expect, it } from "vitest";
import { provedSmall } from "../../tests/journeys/support/provedSmall";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { checkProtocol } from "../check/checkProtocol";
import type { Protocol } from "../session/protocol";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { applyEdit, type Edit } from "./edit";
import { findingsOf } from "./findings";

const found = (protocol: Protocol) => findingsOf(checkProtocol(protocol), protocol);
function changed(protocol: Protocol, edit: Edit): Protocol {
  const edited = applyEdit(protocol, edit);
  return edited.ok ? edited.protocol : expect.fail(edited.trouble.at);
}

describe("what is found", () => {
  it("stands at the step that asks for it, with the way to it and the protocol that was judged", () => {
    const { steps } = found(changed(cartridgeMachine, { do: "removeStep", step: "firstHands" }));
    const [finding] = [...steps.values()].flat().filter(({ breach }) => breach.rule === "handsBeforeGloves");
    expect(finding?.breach.moves.at(-1)).toMatchObject({ kind: "done", step: { id: "firstGloves" } });
    expect(finding?.protocol.setUp.some(({ id }) => id === "firstHands")).toBe(false);
  });

  it("is told once for each rule at each step", () => {
    const { steps } = found(smallProtocol);
    const told = steps.get("coverBoth")?.map(({ breach }) => breach.rule) ?? [];
    expect(told).toContain("disinfectedBeforeCovered");
    expect(new Set(told).size).toBe(told.length);
  });

  it("at the close stands at no step", () => {
    const { elsewhere } = found(changed(provedSmall, { do: "removeStep", step: "cupAway" }));
    expect(elsewhere.map(({ breach }) => breach.rule)).toEqual(["singleUseDiscarded"]);
  });

  it("is nothing where the protocol is proved, and a reason where it is not proved", () => {
    expect(found(provedSmall)).toMatchObject({ count: 0, why: null });
    expect(findingsOf({ verdict: "notProved", why: { code: "stopped" }, states: 1, ms: 1 }, provedSmall)).toMatchObject(
      {
        count: 0,
        why: { code: "stopped" },
      },
    );
  });
});
