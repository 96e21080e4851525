/** Edits of a draft: what they change, which field they name when they cannot, and that nothing else is ever touched. */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../tests/support/smallProtocol";
import type { Effect, Protocol, Step } from "../session/protocol";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { asProtocol } from "../session/readProtocol";
import { applyEdit, type Edit } from "./edit";
import { effectOn, effectWith, productsOn, verbs } from "./editEffects";
import { effectsNaming } from "./editThings";
import { anyEdit } from "./examples";
import { fieldTroubles } from "./fieldTrouble";
import { freeId, newItem, newProduct, newStep } from "./fresh";
import { findStep, stepsAt } from "./place";

const ids = (steps: readonly Step[]): string[] => steps.map(({ id }) => id);

function changed(edit: Edit, protocol: Protocol = smallProtocol): Protocol {
  const found = applyEdit(protocol, edit);
  return found.ok ? found.protocol : expect.fail(`${found.trouble.code} at ${found.trouble.at}`);
}

function troubleOf(edit: Edit, protocol: Protocol = smallProtocol) {
  const found = applyEdit(protocol, edit);
  return found.ok ? expect.fail("it was taken") : found.trouble;
}

describe("steps", () => {
  it("are added where they are asked for, and past the end at the end", () => {
    const step = newStep(smallProtocol, "Look at the floor");
    expect(ids(changed({ do: "addStep", place: "setUp", at: 1, step }).setUp).slice(0, 2)).toEqual([
      "washHands",
      "lookAtTheFloor",
    ]);
    expect(ids(changed({ do: "addStep", place: "newNeedle", at: 99, step }).events[0]?.steps ?? [])).toEqual([
      "oldNeedleOut",
      "newNeedleOpen",
      "lookAtTheFloor",
    ]);
  });

  it("are new with an id that is none of the companion's own", () => {
    expect(newStep(smallProtocol, "Added by us").id).toBe("stepAddedByUs");
  });

  it("are moved within their list", () => {
    const down = changed({ do: "moveStep", step: "washHands", place: "setUp", at: 1 });
    expect(ids(down.setUp).slice(0, 2)).toEqual(["checkLight", "washHands"]);
    expect(changed({ do: "moveStep", step: "washHands", place: "setUp", at: 0 }, down)).toEqual(smallProtocol);
  });

  it("are moved into the flow of an event", () => {
    const moved = changed({ do: "moveStep", step: "checkLight", place: "freshGloves", at: 1 });
    expect(ids(stepsAt(moved, "freshGloves"))).toEqual(["freshOff", "checkLight", "freshWash", "freshOn"]);
    expect(ids(moved.setUp)).not.toContain("checkLight");
  });

  it("are changed field by field, and lose a caution that is emptied", () => {
    const said = changed({
      do: "changeStep",
      step: "washHands",
      part: { caution: { en: "Dry them." }, handsOnSec: 40 },
    });
    expect(findStep(said, "washHands")?.step).toMatchObject({ caution: { en: "Dry them." }, handsOnSec: 40 });
    expect(
      changed({ do: "changeStep", step: "washHands", part: { caution: undefined, handsOnSec: 15 } }, said),
    ).toEqual(smallProtocol);
  });

  it.each<[string, Edit, object]>([
    [
      "no words",
      { do: "changeStep", step: "checkFloor", part: { say: { en: "" } } },
      { at: "$.setUp[2].say.en", code: "empty" },
    ],
    [
      "words too long to be spoken",
      { do: "changeStep", step: "checkFloor", part: { show: { en: "x".repeat(241) } } },
      { at: "$.setUp[2].show.en", code: "tooLong", limit: 240 },
    ],
    [
      "no whole seconds",
      { do: "changeStep", step: "checkFloor", part: { handsOnSec: 1.5 } },
      { at: "$.setUp[2].handsOnSec", code: "notWhole" },
    ],
    [
      "no seconds at all",
      { do: "changeStep", step: "checkFloor", part: { handsOnSec: 0 } },
      { at: "$.setUp[2].handsOnSec", code: "outOfRange", limit: 1 },
    ],
    [
      "another step's id",
      { do: "changeStep", step: "checkFloor", part: { id: "wipeLamp" } },
      { at: "$.breakdown[11].id", code: "taken" },
    ],
    [
      "an id with a blank",
      { do: "changeStep", step: "checkFloor", part: { id: "check floor" } },
      { at: "$.setUp[2].id", code: "notAnId" },
    ],
    ["a step that is not there", { do: "removeStep", step: "ghost" }, { code: "notThere" }],
    [
      "an item that is not there",
      { do: "addEffect", step: "checkFloor", effect: { verb: "touch", item: "ghost" } },
      { at: "$.setUp[2].effects[0].item", code: "notThere" },
    ],
  ])("refuse %s, and name the field", (_, edit, trouble) => {
    expect(troubleOf(edit)).toMatchObject(trouble);
  });

  it("leave no walked list empty", () => {
    expect(troubleOf({ do: "removeStep", step: "coverWound" })).toEqual({
      at: "$.dressing",
      code: "lastOne",
      limit: null,
    });
  });
});

describe("effects", () => {
  it("are put in order and taken out one by one", () => {
    const turned = changed({ do: "moveEffect", step: "coverBoth", at: 1, to: 0 });
    expect(findStep(turned, "coverBoth")?.step.effects.map((e) => "item" in e && e.item)).toEqual(["chair", "lamp"]);
    const one = changed({ do: "removeEffect", step: "coverBoth", at: 0 }, turned);
    expect(findStep(one, "coverBoth")?.step.effects).toEqual([{ verb: "cover", item: "lamp" }]);
  });

  it("keep what was chosen when the verb changes", () => {
    const touch: Effect = { verb: "touch", item: "lamp" };
    expect(effectWith("apply", touch, smallProtocol)).toEqual({ verb: "apply", item: "lamp", product: "spray" });
    expect(effectWith("discard", touch, smallProtocol)).toMatchObject({ item: "lamp", into: "contaminated" });
    expect(effectWith("wash", touch, smallProtocol)).toEqual({ verb: "wash" });
  });

  it("put a sharp into the sharps container unless another bin is chosen (29 CFR 1910.1030(d)(4)(iii)(A)(1))", () => {
    const opened: Effect = { verb: "open", item: "needle" };
    expect(effectWith("discard", opened, smallProtocol)).toMatchObject({ item: "needle", into: "sharps" });
  });

  it("cannot apply a product where there is none", () => {
    expect(effectWith("apply", null, { ...smallProtocol, products: [] })).toBeNull();
  });

  it("put antiseptic on skin and surface disinfectant on everything else, whichever was chosen before", () => {
    const onLamp =
      effectWith("apply", { verb: "touch", item: "lamp" }, cartridgeMachine) ?? expect.fail("there is none");
    expect(onLamp).toMatchObject({ product: "surfaceDisinfectantA" });
    const onSkin = "item" in onLamp ? effectOn("skin", onLamp, cartridgeMachine) : expect.fail("it is on no thing");
    expect(onSkin).toEqual({ verb: "apply", item: "skin", product: "skinAntisepticA" });
    expect(effectOn("lamp", onSkin, cartridgeMachine)).toEqual(onLamp);
    expect(productsOn(cartridgeMachine, "skin").map(({ id }) => id)).toEqual(["skinAntisepticA"]);
  });

  it.each(verbs)("of every verb pass the schema: %s", (verb) => {
    const effect = effectWith(verb, null, smallProtocol) ?? expect.fail("there is none");
    expect(changed({ do: "addEffect", step: "checkFloor", effect }).setUp[2]?.effects).toEqual([effect]);
  });
});

describe("items and products", () => {
  it("carry a new id to wherever the old one stood", () => {
    const renamed = changed({ do: "changeItem", item: "lamp", part: { id: "workLamp" } });
    expect(JSON.stringify(renamed)).not.toContain('"item":"lamp"');
    expect(effectsNaming(renamed, "workLamp")).toBe(effectsNaming(smallProtocol, "lamp"));
    expect(renamed.events.find(({ event }) => event === "touched")?.asksItem).toEqual(["workLamp", "chair"]);
    const sprayed = changed({ do: "changeProduct", product: "spray", part: { id: "foam" } });
    expect(findStep(sprayed, "wetLamp")?.step.effects).toEqual([{ verb: "apply", item: "lamp", product: "foam" }]);
  });

  it("do not take the id of another, which would melt the two into one", () => {
    expect(troubleOf({ do: "changeItem", item: "lamp", part: { id: "chair" } })).toMatchObject({
      at: "$.items[1].id",
      code: "taken",
    });
  });

  it("take with them the effects and questions that named them", () => {
    const without = changed({ do: "removeItem", item: "lamp" });
    expect(effectsNaming(without, "lamp")).toBe(0);
    expect(without.events.find(({ event }) => event === "touched")?.asksItem).toEqual(["chair"]);
    expect(findStep(without, "coverBoth")?.step.effects).toEqual([{ verb: "cover", item: "chair" }]);
    expect(findStep(changed({ do: "removeProduct", product: "spray" }), "wetChair")?.step.effects).toEqual([]);
  });

  it("are new with an id of their own and the careful choices", () => {
    const item = newItem(smallProtocol, "Lamp");
    expect(item).toMatchObject({ id: "lamp2", use: "singleUse" });
    expect(changed({ do: "addItem", item }).items.at(-1)).toEqual(item);
    const product = newProduct(smallProtocol, "Spray");
    expect(product.label).toMatchObject({ oneStep: false, contactSec: 600, expiry: null });
    expect(changed({ do: "addProduct", product }).products.at(-1)).toEqual(product);
  });

  it("stay a surface disinfectant while something is wetted with it", () => {
    expect(troubleOf({ do: "changeProduct", product: "spray", part: { use: "handRub" } })).toMatchObject({
      at: "$.breakdown[5].effects[0].product",
      code: "notForSurfaces",
    });
  });

  it("keep the facts of a label within what a clock can count", () => {
    expect(troubleOf({ do: "changeLabel", product: "spray", part: { contactSec: 3601 } })).toMatchObject({
      at: "$.products[0].label.contactSec",
      code: "outOfRange",
      limit: 3600,
    });
    expect(troubleOf({ do: "changeLabel", product: "spray", part: { expiry: "2026-02-30" } })).toMatchObject({
      at: "$.products[0].label.expiry",
      code: "notADay",
    });
  });
});

describe("ids out of words", () => {
  it.each([
    ["Cover the lamp", "coverTheLamp"],
    ["Cápsulas de tinta", "capsulasDeTinta"],
    ["3 cups!", "cups"],
    ["手", "step"],
    ["", "step"],
  ])("%j is %j", (words, id) => {
    expect(freeId(words, new Set(), "step")).toBe(id);
  });

  property.prop([fc.string({ maxLength: 90 }), fc.uniqueArray(fc.constantFrom("step", "step2", "a", "a2"))])(
    "always fit the schema and are never taken",
    (words, taken) => {
      const id = freeId(words, new Set(taken), "step");
      expect(id).toMatch(/^[a-z][A-Za-z0-9]{0,39}$/);
      expect(taken).not.toContain(id);
    },
  );
});

describe.each([smallProtocol, cartridgeMachine])("whatever is done to $id", (protocol) => {
  property.prop([fc.array(anyEdit, { maxLength: 12 })], { numRuns: 60 })(
    "every edit leaves a protocol that every reader takes, or names the field; the one before stays as it was",
    (edits) => {
      let now: Protocol = protocol;
      for (const make of edits) {
        const before = JSON.stringify(now);
        const found = applyEdit(now, make(now));
        expect(JSON.stringify(now)).toBe(before);
        if (found.ok) {
          expect(asProtocol(JSON.parse(JSON.stringify(found.protocol)))).toEqual({
            ok: true,
            protocol: found.protocol,
          });
          now = found.protocol;
        } else {
          expect(found.trouble.at).toMatch(/^\$/);
          expect(fieldTroubles).toContain(found.trouble.code);
        }
      }
    },
  );
});
