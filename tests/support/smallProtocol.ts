/** A very small station, made up for tests: a chair and a lamp to be kept wet, a needle to be counted, ink that goes. */
import type { z } from "zod";
import { type Effect as EffectSchema, Protocol, type Step } from "../../src/session/protocol";

type Effect = z.input<typeof EffectSchema>;

const step = (id: string, effects: Effect[] = [], more: Partial<Step> = {}) => ({
  id,
  say: { en: `Do ${id}` },
  show: { en: id },
  effects,
  ...more,
});

const surface = (id: string) => ({
  id,
  name: { en: id },
  calledAs: { en: id },
  role: "surface",
  spaulding: "noncritical",
  use: "reusable",
  starts: { condition: "clean" },
});

const apply = (item: string): Effect => ({ verb: "apply", item, product: "spray" });

export const smallProtocol: Protocol = Protocol.parse({
  format: "gloveside-protocol",
  formatVersion: 1,
  id: "small",
  version: "1.0.0",
  name: { en: "Small" },
  about: { en: "For tests." },
  items: [
    surface("chair"),
    surface("lamp"),
    {
      ...surface("needle"),
      role: "sharp",
      spaulding: "critical",
      use: "singleUse",
      starts: { condition: "sterile", at: "away" },
      hasLot: true,
    },
    { ...surface("cup"), role: "supply", use: "singleUse", starts: { condition: "clean" } },
    { ...surface("bottle"), role: "bottle" },
  ],
  products: [
    {
      id: "spray",
      use: "surfaceDisinfectant",
      label: {
        name: { en: "surface disinfectant A" },
        contactSec: 180,
        reapplyWithinSec: 120,
        oneStep: false,
        afterwards: "wipe",
        expiry: null,
      },
    },
  ],
  setUp: [
    step("washHands", [{ verb: "wash" }], { skippable: false }),
    step("checkLight", [], { kind: "check" }),
    step("checkFloor", [], { kind: "check" }),
    step("coverBoth", [
      { verb: "cover", item: "lamp" },
      { verb: "cover", item: "chair" },
    ]),
    step("putGlovesOn", [{ verb: "don" }], { skippable: false }),
    step("openNeedle", [{ verb: "open", item: "needle" }], { skippable: false }),
    step("bottleAway", [{ verb: "takeAway", item: "bottle" }]),
  ],
  events: [
    {
      event: "newNeedle",
      steps: [
        step("oldNeedleOut", [{ verb: "discard", item: "needle", into: "sharps" }], { skippable: false }),
        step("newNeedleOpen", [{ verb: "open", item: "needle" }], { skippable: false }),
      ],
    },
    {
      event: "freshGloves",
      steps: [
        step("freshOff", [{ verb: "doff" }], { skippable: false }),
        step("freshWash", [{ verb: "wash" }], { skippable: false }),
        step("freshOn", [{ verb: "don" }], { skippable: false }),
      ],
    },
    { event: "touched", asksItem: ["lamp", "chair"], steps: [] },
    { event: "stopEarly", steps: [step("tellClient")], onwards: "dressing" },
  ],
  dressing: [
    step("coverWound", [
      { verb: "breakSkin", item: "needle" },
      { verb: "touch", item: "chair" },
    ]),
  ],
  breakdown: [
    step("needleAway", [{ verb: "discard", item: "needle", into: "sharps", all: true }], { skippable: false }),
    step("countSharps", [], { kind: "count", skippable: false }),
    step("cupAway", [{ verb: "discard", item: "cup", into: "contaminated" }]),
    step("uncoverBoth", [
      { verb: "uncover", item: "lamp" },
      { verb: "uncover", item: "chair" },
    ]),
    step("cleanBoth", [
      { verb: "preClean", item: "chair" },
      { verb: "preClean", item: "lamp" },
    ]),
    step("wetChair", [apply("chair")], { skippable: false }),
    step("wetLamp", [apply("lamp")], { skippable: false }),
    step("glovesOff", [{ verb: "doff" }], { skippable: false }),
    step("washBetween", [{ verb: "wash" }], { skippable: false }),
    step("glovesOn", [{ verb: "don" }], { skippable: false }),
    step("wipeChair", [{ verb: "wipe", item: "chair" }], { skippable: false }),
    step("wipeLamp", [{ verb: "wipe", item: "lamp" }], { skippable: false }),
    step("lastGlovesOff", [{ verb: "doff" }], { skippable: false }),
    step("lastWash", [{ verb: "wash" }], { skippable: false }),
  ],
  resuming: [
    step("resumeSharp", [{ verb: "discard", item: "needle", into: "sharps" }], { skippable: false }),
    step("resumeOff", [{ verb: "doff" }], { skippable: false }),
    step("resumeWash", [{ verb: "wash" }], { skippable: false }),
    step("resumeGloves", [{ verb: "don" }], { skippable: false }),
    step("resumeNeedle", [{ verb: "open", item: "needle" }], { skippable: false }),
    step("resumeTold", [], { kind: "check" }),
  ],
});
