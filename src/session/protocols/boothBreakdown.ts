/**
 * Convention booth, taken apart: sharps first, waste, covers, one-step wipes on every surface, wiped last with fresh
 * gloves; then hand rub, the closed bag to the collection point, and soap and water at the shared sink.
 */
import type { Step } from "../protocol";
import { disposablesOut, glovesAndHandsLast, layOutForCleaning, restock, sharpsFirst } from "./breakdownParts";
import { changeGloves, rubHands, washAtSharedSink } from "./hands";
import { surfaceWipesC } from "./products";
import { apply, discard, may, must, touch, uncover, wipe } from "./writing";

const wet = (...items: string[]) => apply(surfaceWipesC.id, ...items);
const furniture = ["lamp", "boothTable", "armRest", "chair"] as const;
const tools = ["screen", "microphone", "washBottle", "secondMachine", "machine"] as const;

export const boothBreakdown: Step[] = [
  ...sharpsFirst([
    "Drop every cartridge into the sharps container.",
    "Echa todos los cartuchos al contenedor de punzantes.",
  ]),
  ...changeGloves("wasteGloves", rubHands),
  layOutForCleaning(
    [
      "Bring a clean plate, fresh towels and plenty of wipes.",
      "Trae bandeja limpia, toallas nuevas y bastantes toallitas.",
    ],
    "pulledWipes",
  ),
  disposablesOut(
    ["Grip, cups, towels and wraps into the waste bag.", "Grip, cápsulas, toallas y coberturas a la bolsa."],
    "grip",
  ),
  must("uncoverAll", {
    say: ["Peel off every film and bag, into the waste bag.", "Retira cada film y bolsa a la bolsa de residuos."],
    show: ["All covers off", "Retirar todas las barreras"],
    caution: [
      "Roll them inwards. Machines and wash bottle onto the plate.",
      "Enróllalas hacia dentro. Máquinas y lavador a la bandeja.",
    ],
    does: [uncover(...furniture, ...tools), discard("contaminated", "screenFilm", "barriers")],
    sec: 90,
  }),
  must("wetFurniture", {
    say: [
      "Wet lamp, table, arm rest and chair with fresh wipes.",
      "Moja lámpara, mesa, apoyabrazos y silla con toallitas nuevas.",
    ],
    show: ["Wet the furniture", "Mojar el mobiliario"],
    caution: [
      "Visible blood comes off first, with a wipe of its own.",
      "La sangre visible se quita antes, con otra toallita.",
    ],
    does: [wet(...furniture)],
    sec: 60,
  }),
  must("wetTools", {
    say: [
      "Wet screen, microphone, wash bottle and both machines.",
      "Moja pantalla, micrófono, lavador y ambas máquinas.",
    ],
    show: ["Wet electrics and machines", "Mojar aparatos y máquinas"],
    caution: ["One fresh wipe for each thing.", "Una toallita nueva para cada cosa."],
    does: [wet(...tools)],
    sec: 75,
  }),
  ...changeGloves("wipingGloves", rubHands),
  must("wipeFurniture", {
    say: ["Wipe dry: lamp, table, arm rest, then chair.", "Seca en orden: lámpara, mesa, apoyabrazos, silla."],
    show: ["Wipe the furniture dry", "Secar el mobiliario"],
    does: [touch("freshTowels"), wipe(...furniture)],
    sec: 45,
  }),
  must("wipeTools", {
    say: ["Wipe dry: screen, microphone, wash bottle, machines.", "Seca: pantalla, micrófono, lavador, máquinas."],
    show: ["Wipe electrics and machines", "Secar aparatos y máquinas"],
    does: [wipe(...tools)],
    sec: 45,
  }),
  ...glovesAndHandsLast(rubHands, "pulledWipes"),
  may("bagToCollection", {
    say: [
      "Carry the closed bag to the hall's contaminated-waste point.",
      "Lleva la bolsa cerrada al punto de residuos contaminados.",
    ],
    show: ["Bag to collection point", "Bolsa al punto autorizado"],
    sec: 240,
  }),
  washAtSharedSink("sinkLast"),
  restock(),
];
