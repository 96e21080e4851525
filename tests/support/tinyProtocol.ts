/** The smallest protocol that keeps every rule: one lamp, one needle, one cup, three flows. Made to be broken at random. */
import type { z } from "zod";
import { type Effect as EffectSchema, Protocol } from "../../src/session/protocol";

type Effect = z.input<typeof EffectSchema>;

const step = (id: string, effects: Effect[], more: object = {}) => ({
  id,
  say: { en: `Do ${id}.` },
  show: { en: id },
  effects,
  skippable: false,
  ...more,
});
const fresh = (name: string) => [
  step(`${name}Off`, [{ verb: "doff" }]),
  step(`${name}Hands`, [{ verb: "rub" }]),
  step(`${name}On`, [{ verb: "don" }]),
];
const thing = (id: string, more: object = {}) => ({
  id,
  name: { en: id },
  calledAs: { en: id },
  role: "surface",
  spaulding: "noncritical",
  use: "reusable",
  starts: { condition: "clean" },
  ...more,
});

export const tinyProtocol = Protocol.parse({
  format: "gloveside-protocol",
  formatVersion: 1,
  id: "tiny",
  version: "1.0.0",
  name: { en: "Tiny" },
  about: { en: "Made to be broken." },
  items: [
    thing("lamp"),
    thing("needle", { role: "sharp", spaulding: "critical", use: "singleUse", starts: { condition: "sterile" } }),
    thing("cup", { role: "supply", use: "singleUse" }),
    thing("skin", { role: "skin", spaulding: "semicritical" }),
  ],
  products: [
    {
      id: "spray",
      use: "surfaceDisinfectant",
      label: {
        name: { en: "surface disinfectant A" },
        contactSec: 60,
        reapplyWithinSec: null,
        oneStep: true,
        afterwards: "wipe",
        expiry: null,
      },
    },
    {
      id: "antiseptic",
      use: "skinAntiseptic",
      label: {
        name: { en: "skin antiseptic A" },
        contactSec: 60,
        reapplyWithinSec: null,
        oneStep: false,
        afterwards: "airDry",
        expiry: null,
      },
    },
  ],
  setUp: [
    step("firstHands", [{ verb: "wash" }]),
    step("firstOn", [{ verb: "don" }]),
    step("wet", [{ verb: "apply", item: "lamp", product: "spray" }]),
    step("wipe", [{ verb: "wipe", item: "lamp" }]),
    step("cover", [
      { verb: "cover", item: "lamp" },
      { verb: "touch", item: "cup" },
    ]),
    step("prepare", [{ verb: "apply", item: "skin", product: "antiseptic" }]),
    step("openNeedle", [{ verb: "open", item: "needle" }]),
    step("begin", [
      { verb: "breakSkin", item: "needle" },
      { verb: "touch", item: "lamp" },
    ]),
  ],
  events: [
    { event: "freshGloves", steps: fresh("fresh") },
    {
      event: "clientLeaves",
      steps: [
        step("leaveCover", [{ verb: "cover", item: "skin" }]),
        step("leaveSharps", [{ verb: "discard", item: "needle", into: "sharps" }]),
        step("leaveOff", [{ verb: "doff" }]),
        step("leaveHands", [{ verb: "wash" }]),
      ],
    },
    {
      event: "clientReturns",
      steps: [
        step("backHands", [{ verb: "rub" }]),
        step("backOn", [{ verb: "don" }]),
        step("backNeedle", [{ verb: "open", item: "needle" }]),
        step("backGoOn", [{ verb: "breakSkin", item: "needle" }], { atWork: true }),
      ],
    },
  ],
  dressing: [...fresh("dress"), step("wrap", [{ verb: "cover", item: "skin" }]), step("sheet", [], { kind: "check" })],
  breakdown: [
    step("sharps", [{ verb: "discard", item: "needle", into: "sharps", all: true }]),
    step("count", [], { kind: "count" }),
    step("waste", [{ verb: "discard", item: "cup", into: "contaminated" }]),
    step("uncover", [{ verb: "uncover", item: "lamp" }]),
    step("endWet", [{ verb: "apply", item: "lamp", product: "spray" }]),
    ...fresh("end"),
    step("endWipe", [{ verb: "wipe", item: "lamp" }]),
    step("lastOff", [{ verb: "doff" }]),
    step("lastHands", [{ verb: "wash" }]),
  ],
  resuming: [
    ...fresh("hurt"),
    step("hurtSharps", [{ verb: "discard", item: "needle", into: "sharps", all: true }]),
    ...fresh("hurtFresh"),
    step("hurtNeedle", [{ verb: "open", item: "needle" }], { atWork: true }),
  ],
});
