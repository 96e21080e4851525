/**
 * Convention booth, before the client is touched. The sink is shared and a walk away: soap and water there first, hand
 * rub at the booth while hands are not visibly soiled (WHO 2009; 29 CFR 1910.1030 (d)(2)(iv), from memory).
 */
import type { Step } from "../protocol";
import { clientTimeOut } from "./clientTimeOut";
import { changeGloves, glovesOn, jewelleryOff, rubHands, washAtSharedSink } from "./hands";
import { surfaceWipesC } from "./products";
import { companionCovered, inkPoured, packsInDate, sharpsContainerReady, skinPrepared } from "./setUpParts";
import { apply, breakSkin, cover, look, must, open, takeAway, touch, wipe } from "./writing";

const surfaces = ["lamp", "boothTable", "armRest", "chair"] as const;

export const boothSetUp: Step[] = [
  look("boothClosedOff", {
    say: [
      "Close the booth off: no visitors, bags, food or drinks inside.",
      "Cierra el stand: sin visitas, bolsos, comida ni bebidas.",
    ],
    show: ["Booth closed off", "Stand cerrado al público"],
    sec: 60,
  }),
  jewelleryOff("jewelleryOff"),
  washAtSharedSink("firstHands"),
  rubHands("firstRub"),
  glovesOn("firstGloves"),
  must("wetSurfaces", {
    say: [
      "Wet lamp, table, arm rest and chair with fresh wipes.",
      "Moja lámpara, mesa, apoyabrazos y silla con toallitas nuevas.",
    ],
    show: ["Wet the surfaces", "Mojar las superficies"],
    caution: [
      "Pull enough wipes first. Visible dirt comes off before; then wet.",
      "Saca antes las toallitas. Primero quita lo visible; luego moja.",
    ],
    does: [touch("wipesTub"), touch(...surfaces), apply(surfaceWipesC.id, ...surfaces)],
    sec: 60,
  }),
  ...changeGloves("coveringGloves", rubHands),
  must("wipeSurfaces", {
    say: ["Wipe dry: lamp, table, arm rest, then chair.", "Seca en orden: lámpara, mesa, apoyabrazos, silla."],
    show: ["Wipe the surfaces dry", "Secar las superficies"],
    does: [wipe(...surfaces)],
    sec: 45,
  }),
  must("coverSurfaces", {
    say: [
      "Film over lamp, arm rest and chair; table twice.",
      "Film en lámpara, apoyabrazos y silla; mesa con dos capas.",
    ],
    show: ["Cover the surfaces", "Cubrir las superficies"],
    does: [touch("barriers"), cover(...surfaces)],
    sec: 90,
  }),
  must("coverTools", {
    say: ["Bag both machines and the wash bottle.", "Enfunda ambas máquinas y el lavador."],
    show: ["Bag machines and bottle", "Enfundar máquinas y lavador"],
    does: [cover("machine", "secondMachine", "washBottle")],
    sec: 60,
  }),
  companionCovered(),
  sharpsContainerReady(),
  packsInDate([
    "Check cartridge and grip packs: sealed, dry, in date.",
    "Revisa envases de cartucho y grip: sellados, secos, vigentes.",
  ]),
  inkPoured(),
  must("bottlesAway", {
    say: ["Close bottles and wipes away in their case.", "Guarda frascos y bote de toallitas en su maletín."],
    show: ["Bottles into their case", "Frascos al maletín"],
    does: [takeAway("inkBottles", "antiseptic", "stencilFluid", "wipesTub")],
    sec: 20,
  }),
  ...clientTimeOut(),
  ...skinPrepared(),
  ...changeGloves("sterileGloves", rubHands),
  must("fitSterile", {
    say: ["Open the grip and a cartridge, and fit them.", "Abre el grip y un cartucho, y colócalos."],
    show: ["Open and fit sterile", "Abrir y colocar estéril"],
    caution: ["Touch no point and no tip.", "No toques puntas ni boquilla."],
    does: [open("grip", "needle"), touch("machine")],
    sec: 45,
  }),
  must("begin", {
    say: [
      "Begin. From the first line your gloves are soiled.",
      "Empieza. Desde la primera línea tus guantes están sucios.",
    ],
    show: ["Begin the tattoo", "Empezar el tatuaje"],
    does: [
      breakSkin("needle", "grip", "towels", "cups", "rinseCup"),
      touch("machine", "washBottle", "boothTable", "armRest", "lamp", "chair", "screen", "microphone"),
    ],
    sec: 5,
  }),
];
