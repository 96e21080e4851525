/**
 * Convention booth without a sink: battery pen, single-use grip, one-step wipes. Hands are rubbed at the booth and
 * washed at the shared sink whenever they are visibly soiled, a glove tore, or the booth is left.
 */
import type { Protocol } from "../protocol";
import { boothBreakdown } from "./boothBreakdown";
import { boothItems, covered } from "./boothItems";
import { boothSetUp } from "./boothSetUp";
import { dressing } from "./dressing";
import { eventFlows } from "./eventFlows";
import { rubHands, washAtSharedSink } from "./hands";
import { handRubA, skinAntisepticA, surfaceWipesC } from "./products";
import { resuming } from "./resuming";
import { type Both, text } from "./writing";

const openNew: Both = ["Open a new cartridge and fit it.", "Abre un cartucho nuevo y colócalo."];

export const conventionBooth: Protocol = {
  format: "gloveside-protocol",
  formatVersion: 1,
  id: "conventionBooth",
  version: "1.0.0",
  name: text(["Convention booth without a sink", "Stand de convención sin lavamanos"]),
  about: text([
    "A booth in a hall with a shared sink. Labels, the organiser's rules and local law come before this list.",
    "Stand con lavamanos común. Las etiquetas, las normas del organizador y la ley local mandan sobre esta lista.",
  ]),
  items: [...boothItems],
  products: [surfaceWipesC, skinAntisepticA, handRubA],
  setUp: boothSetUp,
  events: eventFlows({
    hygiene: rubHands,
    wash: washAtSharedSink,
    held: ["machine", "grip"],
    heldSecond: ["secondMachine", "grip"],
    heldAfterPark: ["machine", "grip"],
    secondTip: [],
    covered,
    droppable: ["needle", "towels", "cups", "machine", "washBottle", "grip", "secondMachine"],
    touchable: ["chair", "lamp", "screen", "handRubBottle", "spareCups", "barriers", "sharpsContainer", "inkBottles"],
    words: {
      intoSharps: ["Drop the cartridge into the sharps container.", "Echa el cartucho al contenedor de punzantes."],
      openNew,
      park: ["Park the cartridge on the table, points covered.", "Aparta el cartucho en la mesa, puntas cubiertas."],
      takeUp: ["Take the parked cartridge up again, and go on.", "Retoma el cartucho apartado y continúa."],
      swapIn: [
        "Fit the grip and a new cartridge to the second machine.",
        "Pon el grip y un cartucho nuevo en la segunda máquina.",
      ],
    },
  }),
  dressing: dressing(rubHands),
  breakdown: boothBreakdown,
  resuming: resuming({
    wash: washAtSharedSink,
    hygiene: rubHands,
    product: surfaceWipesC.id,
    surfaces: ["boothTable", "armRest"],
    surfacesSaid: ["the table and arm rest", "la mesa y el apoyabrazos"],
    held: ["machine", "grip"],
    openNew,
    oneStep: surfaceWipesC.label.oneStep,
  }),
};
