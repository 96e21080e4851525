/**
 * Station with autoclaved tubes, taken apart: sharps first, tubes into their closed box for cleaning and sterilising,
 * disposables, covers, then every surface cleaned, kept wet and wiped last (order: common practice, no source).
 */
import type { Step } from "../protocol";
import { disposablesOut, glovesAndHandsLast, layOutForCleaning, restock, sharpsFirst } from "./breakdownParts";
import { changeGloves, washHands } from "./hands";
import { surfaceDisinfectantB } from "./products";
import { apply, discard, fill, must, preClean, touch, uncover, wipe } from "./writing";

const wet = (...items: string[]) => apply(surfaceDisinfectantB.id, ...items);
const furniture = ["lamp", "worktop", "armRest", "chair"] as const;
const electrics = ["screen", "microphone", "powerSupply", "cord"] as const;
const tools = ["machine", "secondMachine", "washBottle"] as const;

export const tubesBreakdown: Step[] = [
  ...sharpsFirst([
    "Slide every needle from its tube into the sharps container.",
    "Saca cada aguja del tubo directo al contenedor de punzantes.",
  ]),
  ...changeGloves("wasteGloves", washHands),
  layOutForCleaning(
    [
      "Bring plate, instrument box, fresh towels and soaked towels.",
      "Trae bandeja, caja de instrumental, toallas nuevas y empapadas.",
    ],
    "soakedTowels",
    "instrumentBox",
  ),
  must("tubesToReprocess", {
    say: ["Put both tubes into the instrument box; close it.", "Pon ambos tubos en la caja de instrumental; ciérrala."],
    show: ["Tubes into instrument box", "Tubos a la caja"],
    caution: [
      "Kept moist. Cleaned and sterilised away from the station.",
      "Húmedos. Se lavan y esterilizan fuera de la estación.",
    ],
    does: [discard("reprocess", "tube", "secondTube"), fill("instrumentBox")],
    sec: 30,
  }),
  disposablesOut(
    ["Bands, cups, towels and wraps into the waste bag.", "Ligas, cápsulas, toallas y coberturas a la bolsa."],
    "bands",
  ),
  must("uncoverAll", {
    say: [
      "Peel off every film, bag and sleeve, into the waste bag.",
      "Retira cada film, bolsa y funda a la bolsa de residuos.",
    ],
    show: ["All covers off", "Retirar todas las barreras"],
    caution: [
      "Roll them inwards. Machines and wash bottle onto the plate.",
      "Enróllalas hacia dentro. Máquinas y lavador a la bandeja.",
    ],
    does: [uncover(...furniture, ...electrics, ...tools), discard("contaminated", "screenFilm", "barriers")],
    sec: 120,
  }),
  must("cleanAll", {
    say: [
      "Clean the box and everything uncovered with detergent towels.",
      "Limpia la caja y todo lo descubierto con detergente.",
    ],
    show: ["Clean before disinfecting", "Limpiar antes de desinfectar"],
    caution: ["Disinfectant does not work through dirt.", "El desinfectante no actúa sobre suciedad."],
    does: [preClean(...furniture, ...electrics, ...tools, "instrumentBox")],
    sec: 260,
  }),
  must("wetFurniture", {
    say: [
      "Wet lamp, worktop, arm rest and chair with soaked towels.",
      "Moja lámpara, mesa, apoyabrazos y sillón con toallas empapadas.",
    ],
    show: ["Wet the furniture", "Mojar el mobiliario"],
    does: [wet(...furniture)],
    sec: 60,
  }),
  must("wetElectrics", {
    say: [
      "Wet screen, microphone, power supply and cord, by towel.",
      "Moja pantalla, micrófono, fuente y cable, con toalla.",
    ],
    show: ["Wet the electrics", "Mojar los aparatos"],
    caution: ["Unplugged, and no drops into openings.", "Desconectado, sin gotas en las aberturas."],
    does: [wet(...electrics)],
    sec: 60,
  }),
  must("wetTools", {
    say: ["Wet instrument box, wash bottle and both machines.", "Moja caja de instrumental, lavador y ambas máquinas."],
    show: ["Wet box, bottle, machines", "Mojar caja, lavador, máquinas"],
    does: [wet("instrumentBox", ...tools)],
    sec: 60,
  }),
  ...changeGloves("wipingGloves", washHands),
  must("wipeFurniture", {
    say: ["Wipe dry: lamp, worktop, arm rest, then chair.", "Seca en orden: lámpara, mesa, apoyabrazos, sillón."],
    show: ["Wipe the furniture dry", "Secar el mobiliario"],
    does: [touch("freshTowels"), wipe(...furniture)],
    sec: 60,
  }),
  must("wipeElectrics", {
    say: ["Wipe dry: screen, microphone, power supply, cord.", "Seca: pantalla, micrófono, fuente, cable."],
    show: ["Wipe the electrics dry", "Secar los aparatos"],
    does: [wipe(...electrics)],
    sec: 60,
  }),
  must("wipeTools", {
    say: ["Wipe dry: wash bottle, machines, instrument box.", "Seca: lavador, máquinas, caja de instrumental."],
    show: ["Wipe bottle, machines, box", "Secar lavador, máquinas, caja"],
    does: [wipe("washBottle", "secondMachine", "machine", "instrumentBox")],
    sec: 60,
  }),
  ...glovesAndHandsLast(washHands, "soakedTowels"),
  restock(),
];
