/**
 * Coil machines with bar needles in steel tubes that the studio sterilises itself. Surface disinfectant on soaked
 * towels; used tubes leave in a closed box (Spaulding 1968: critical items are cleaned and sterilised).
 */
import type { Protocol } from "../protocol";
import { dressing } from "./dressing";
import { eventFlows } from "./eventFlows";
import { washHands } from "./hands";
import { handRubA, skinAntisepticA, surfaceDisinfectantB } from "./products";
import { resuming } from "./resuming";
import { tubesBreakdown } from "./tubesBreakdown";
import { covered, tubesItems } from "./tubesItems";
import { tubesSetUp } from "./tubesSetUp";
import { text } from "./writing";

export const autoclavedTubes: Protocol = {
  format: "gloveside-protocol",
  formatVersion: 1,
  id: "autoclavedTubes",
  version: "1.0.0",
  name: text(["Bar needles, autoclaved tubes and grips", "Agujas de barra, tubos y grips esterilizados"]),
  about: text([
    "A studio with a sink and a steriliser. Labels, local law and the studio's own plan come before this list.",
    "Estudio con lavamanos y esterilizador. Las etiquetas, la ley local y el plan del estudio mandan sobre esta lista.",
  ]),
  items: [...tubesItems],
  products: [surfaceDisinfectantB, skinAntisepticA, handRubA],
  setUp: tubesSetUp,
  events: eventFlows({
    hygiene: washHands,
    wash: washHands,
    held: ["machine", "tube"],
    heldSecond: ["secondTube", "secondMachine"],
    heldAfterPark: ["secondTube", "machine"],
    secondTip: ["secondTube"],
    covered,
    droppable: [
      "needle",
      "towels",
      "cups",
      "tube",
      "machine",
      "secondTube",
      "washBottle",
      "cord",
      "secondMachine",
      "bands",
    ],
    touchable: [
      "lamp",
      "chair",
      "screen",
      "powerSupply",
      "spareCups",
      "bands",
      "barriers",
      "sharpsContainer",
      "inkBottles",
    ],
    words: {
      intoSharps: [
        "Slide the needle out, into the sharps container.",
        "Saca la aguja, directo al contenedor de punzantes.",
      ],
      openNew: ["Open a new needle and fit it.", "Abre una aguja nueva y colócala."],
      park: ["Park the needle in its tube, point drawn in.", "Aparta la aguja en su tubo, punta retraída."],
      takeUp: ["Take the parked needle up again, and go on.", "Retoma la aguja apartada y continúa."],
      swapIn: ["Fit the second tube and a new needle to the shader.", "Arma la de sombra: segundo tubo y aguja nueva."],
    },
  }),
  dressing: dressing(washHands),
  breakdown: tubesBreakdown,
  resuming: resuming({
    wash: washHands,
    hygiene: washHands,
    product: surfaceDisinfectantB.id,
    surfaces: ["worktop", "armRest"],
    surfacesSaid: ["the worktop and arm rest", "la mesa y el apoyabrazos"],
    held: ["secondTube", "machine"],
    openNew: ["Open a new needle; fit it in the second tube.", "Abre una aguja nueva; colócala en el segundo tubo."],
    oneStep: surfaceDisinfectantB.label.oneStep,
  }),
};
