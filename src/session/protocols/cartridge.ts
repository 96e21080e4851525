/**
 * Cartridge machine with a single-use grip, at a studio station with its own sink. Surface disinfectant by spray; no
 * autoclave, so whatever meets blood is thrown away (29 CFR 1910.1030; Spaulding 1968).
 */
import type { Protocol } from "../protocol";
import { cartridgeBreakdown } from "./cartridgeBreakdown";
import { cartridgeItems, covered } from "./cartridgeItems";
import { cartridgeSetUp } from "./cartridgeSetUp";
import { dressing } from "./dressing";
import { eventFlows } from "./eventFlows";
import { washHands } from "./hands";
import { handRubA, skinAntisepticA, surfaceDisinfectantA } from "./products";
import { resuming } from "./resuming";
import { type Both, text } from "./writing";

const openNew: Both = ["Open a new cartridge and fit it.", "Abre un cartucho nuevo y colócalo."];

export const cartridgeMachine: Protocol = {
  format: "gloveside-protocol",
  formatVersion: 1,
  id: "cartridgeMachine",
  version: "1.0.0",
  name: text(["Cartridge machine, single-use grip", "Máquina de cartuchos, grip desechable"]),
  about: text([
    "A studio station with a sink. The product label, local law and the studio's own plan come before this list.",
    "Estación de estudio con lavamanos. La etiqueta, la ley local y el plan del estudio mandan sobre esta lista.",
  ]),
  items: [...cartridgeItems],
  products: [surfaceDisinfectantA, skinAntisepticA, handRubA],
  setUp: cartridgeSetUp,
  events: eventFlows({
    hygiene: washHands,
    wash: washHands,
    held: ["machine", "grip"],
    heldSecond: ["secondMachine", "grip"],
    heldAfterPark: ["machine", "grip"],
    secondTip: [],
    covered,
    droppable: ["needle", "towels", "cups", "machine", "washBottle", "cord", "grip", "secondMachine"],
    touchable: ["lamp", "chair", "screen", "powerSupply", "spareCups", "barriers", "sharpsContainer", "inkBottles"],
    words: {
      intoSharps: ["Drop the cartridge into the sharps container.", "Echa el cartucho al contenedor de punzantes."],
      openNew,
      park: ["Park the cartridge on the worktop, points covered.", "Aparta el cartucho en la mesa, puntas cubiertas."],
      takeUp: ["Take the parked cartridge up again, and go on.", "Retoma el cartucho apartado y continúa."],
      swapIn: [
        "Fit the grip and a new cartridge to the second machine.",
        "Pon el grip y un cartucho nuevo en la segunda máquina.",
      ],
    },
  }),
  dressing: dressing(washHands),
  breakdown: cartridgeBreakdown,
  resuming: resuming({
    wash: washHands,
    hygiene: washHands,
    product: surfaceDisinfectantA.id,
    surfaces: ["worktop", "armRest"],
    surfacesSaid: ["the worktop and arm rest", "la mesa y el apoyabrazos"],
    held: ["machine", "grip"],
    openNew,
    oneStep: surfaceDisinfectantA.label.oneStep,
  }),
};
