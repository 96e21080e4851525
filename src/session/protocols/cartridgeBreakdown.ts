/**
 * Cartridge station, taken apart: sharps first and counted, fresh gloves, waste, covers off, cleaned, kept wet; then
 * fresh gloves again and wiped from clean to dirty, machines and wash bottle last (order: common practice, no source;
 * clean to dirty, high to low: CDC environmental cleaning, from memory).
 */
import type { Step } from "../protocol";
import { disposablesOut, glovesAndHandsLast, layOutForCleaning, restock, sharpsFirst } from "./breakdownParts";
import { changeGloves, washHands } from "./hands";
import { surfaceDisinfectantA } from "./products";
import { apply, discard, must, preClean, touch, uncover, wipe } from "./writing";

const wet = (...items: string[]) => apply(surfaceDisinfectantA.id, ...items);
const furniture = ["lamp", "worktop", "armRest", "chair"] as const;
const electrics = ["screen", "microphone", "powerSupply", "cord"] as const;
const tools = ["machine", "secondMachine", "washBottle"] as const;

export const cartridgeBreakdown: Step[] = [
  ...sharpsFirst([
    "Drop every cartridge into the sharps container.",
    "Echa todos los cartuchos al contenedor de punzantes.",
  ]),
  ...changeGloves("wasteGloves", washHands),
  layOutForCleaning(
    ["Bring a clean plate, fresh towels and the spray bottle.", "Trae bandeja limpia, toallas nuevas y el atomizador."],
    "sprayBottle",
  ),
  disposablesOut(
    ["Grip, cups, towels and wraps into the waste bag.", "Grip, cápsulas, toallas y coberturas a la bolsa."],
    "grip",
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
      "Clean everything you uncovered with detergent towels.",
      "Limpia todo lo descubierto con toallas y detergente.",
    ],
    show: ["Clean before disinfecting", "Limpiar antes de desinfectar"],
    caution: ["Disinfectant does not work through dirt.", "El desinfectante no actúa sobre suciedad."],
    does: [preClean(...furniture, ...electrics, ...tools)],
    sec: 240,
  }),
  must("wetFurniture", {
    say: [
      "Spray lamp, worktop, arm rest and chair until visibly wet.",
      "Rocía lámpara, mesa, apoyabrazos y sillón hasta mojarlos.",
    ],
    show: ["Spray the furniture wet", "Rociar el mobiliario"],
    does: [touch("sprayBottle"), wet(...furniture)],
    sec: 60,
  }),
  must("wetElectrics", {
    say: [
      "Wet screen, microphone, power supply and cord, by towel.",
      "Moja pantalla, micrófono, fuente y cable, con toalla.",
    ],
    show: ["Wet the electrics", "Mojar los aparatos"],
    caution: ["Unplugged. Spray the towel, never the device.", "Desconectado. Rocía la toalla, nunca el aparato."],
    does: [touch("sprayBottle"), wet(...electrics)],
    sec: 60,
  }),
  must("wetTools", {
    say: ["Wet machines and wash bottle on the plate.", "Moja máquinas y lavador en la bandeja."],
    show: ["Wet machines, wash bottle", "Mojar máquinas y lavador"],
    does: [touch("sprayBottle"), wet(...tools)],
    sec: 45,
  }),
  must("wetSprayBottle", {
    say: [
      "Bag off the spray bottle; clean it and wet it last.",
      "Quita la funda al atomizador; límpialo y mójalo al final.",
    ],
    show: ["Wet the spray bottle", "Mojar el atomizador"],
    does: [uncover("sprayBottle"), preClean("sprayBottle"), wet("sprayBottle")],
    sec: 30,
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
    say: ["Wipe dry: spray bottle, wash bottle, machines.", "Seca: atomizador, lavador, máquinas."],
    show: ["Wipe bottles and machines", "Secar frascos y máquinas"],
    does: [wipe("sprayBottle", "washBottle", "secondMachine", "machine")],
    sec: 60,
  }),
  ...glovesAndHandsLast(washHands),
  restock(),
];
