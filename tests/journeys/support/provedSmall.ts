/**
 * The small station of tests/support made safe, so that Prepare offers it: nothing is covered, and gloves are changed
 * between soiled and clean work. Its steps keep their names.
 */
import { type Item, Protocol, type Step } from "../../../src/session/protocol";
import { skinAntisepticA } from "../../../src/session/protocols/products";
import { smallProtocol } from "../../support/smallProtocol";

type Effects = Step["effects"];

const must = (id: string, ...effects: Effects): Step => ({
  ...{ id, kind: "do", say: { en: `Do ${id}` }, show: { en: id } },
  ...{ effects, handsOnSec: 15, skippable: false },
});
const needle = "needle";
const gloves = (name: string): Step[] => [
  must(`${name}Off`, { verb: "doff" }),
  must(`${name}Wash`, { verb: "wash" }),
  must(`${name}On`, { verb: "don" }),
];
const newNeedle = (name: string): Step => must(name, { verb: "open", item: needle });
const intoSharps = (name: string, all = false): Step =>
  must(name, { verb: "discard", item: needle, into: "sharps", all });
const back = (name: string): Step => ({ ...must(name, { verb: "breakSkin", item: needle }), atWork: true });

const kept = (list: readonly Step[], ...ids: string[]): Step[] => list.filter(({ id }) => ids.includes(id));
const { setUp, breakdown, events } = smallProtocol;

const skin: Item = {
  ...{ id: "skin", name: { en: "skin" }, calledAs: { en: "skin" }, role: "skin", spaulding: "semicritical" },
  ...{ use: "reusable", porous: false, hasLot: false },
  starts: { condition: "clean", barrier: "none", at: "station" },
};

export const provedSmall: Protocol = Protocol.parse({
  ...smallProtocol,
  items: [...smallProtocol.items, skin],
  products: [...smallProtocol.products, skinAntisepticA],
  setUp: [
    ...kept(setUp, "washHands", "checkLight", "checkFloor"),
    { ...must("bottleAway", { verb: "takeAway", item: "bottle" }) },
    ...kept(setUp, "putGlovesOn"),
    must("openNeedle", { verb: "apply", item: "skin", product: skinAntisepticA.id }, { verb: "open", item: needle }),
  ],
  events: [
    {
      event: "newNeedle",
      steps: [intoSharps("oldNeedleOut"), ...gloves("needle"), newNeedle("newNeedleOpen"), back("needleBack")],
    },
    { event: "freshGloves", steps: [...gloves("fresh"), back("freshBack")] },
    { event: "tornGlove", steps: [...gloves("torn"), back("tornBack")] },
    { event: "touched", asksItem: ["lamp", "chair"], steps: [...gloves("touched"), back("touchedBack")] },
    ...events.filter(({ event }) => event === "stopEarly"),
  ],
  dressing: [
    ...gloves("dressing"),
    must("coverWound", { verb: "touch", item: "cup" }, { verb: "cover", item: "skin" }),
  ],
  breakdown: [
    intoSharps("needleAway", true),
    ...kept(breakdown, "countSharps"),
    must("cupAway", { verb: "discard", item: "cup", into: "contaminated", all: false }),
    ...kept(breakdown, "cleanBoth").map((step) => ({ ...step, skippable: false })),
    ...kept(breakdown, "wetChair", "wetLamp", "glovesOff", "washBetween", "glovesOn"),
    ...kept(breakdown, "wipeChair", "wipeLamp", "lastGlovesOff", "lastWash"),
  ],
  resuming: [
    ...gloves("first"),
    intoSharps("resumeSharp"),
    ...gloves("resume"),
    { ...newNeedle("resumeNeedle"), atWork: true },
  ],
});

/** The same with contact times of a second, so that whole sessions are soon lived. */
export const quickSmall: Protocol = Protocol.parse({
  ...provedSmall,
  products: provedSmall.products.map((slot) => ({
    ...slot,
    label: { ...slot.label, contactSec: 1, reapplyWithinSec: null },
  })),
});
/** Which step of it wipes which surface. */
export const wipes = { wipeChair: "chair", wipeLamp: "lamp" };
