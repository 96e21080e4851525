/**
 * Cartridge station, before the client is touched: surfaces cleaned and kept wet, everything covered, packs in date,
 * ink poured and bottles gone, the client's time-out, skin, then fresh gloves and the sterile packs.
 */
import type { Step } from "../protocol";
import { clientTimeOut } from "./clientTimeOut";
import { changeGloves, glovesOn, jewelleryOff, washHands } from "./hands";
import { surfaceDisinfectantA } from "./products";
import { companionCovered, inkPoured, packsInDate, sharpsContainerReady, skinPrepared } from "./setUpParts";
import { apply, breakSkin, cover, must, open, preClean, takeAway, touch, wipe } from "./writing";

const surfaces = ["lamp", "worktop", "armRest", "chair"] as const;

export const cartridgeSetUp: Step[] = [
  jewelleryOff("jewelleryOff"),
  washHands("firstHands"),
  glovesOn("firstGloves"),
  must("cleanSurfaces", {
    say: [
      "Clean lamp, worktop, arm rest and chair with detergent.",
      "Limpia lámpara, mesa, apoyabrazos y sillón con detergente.",
    ],
    show: ["Clean the surfaces", "Limpiar las superficies"],
    does: [preClean(...surfaces)],
    sec: 120,
  }),
  must("wetSurfaces", {
    say: [
      "Spray lamp, worktop, arm rest and chair until visibly wet.",
      "Rocía lámpara, mesa, apoyabrazos y sillón hasta mojarlos.",
    ],
    show: ["Spray the surfaces wet", "Rociar las superficies"],
    caution: ["Visibly wet for the whole time on the label.", "Visiblemente mojado todo el tiempo de la etiqueta."],
    does: [touch("sprayBottle"), apply(surfaceDisinfectantA.id, ...surfaces)],
    sec: 60,
  }),
  ...changeGloves("coveringGloves", washHands),
  must("wipeSurfaces", {
    say: ["Wipe dry: lamp, worktop, arm rest, then chair.", "Seca en orden: lámpara, mesa, apoyabrazos, sillón."],
    show: ["Wipe the surfaces dry", "Secar las superficies"],
    does: [wipe(...surfaces)],
    sec: 60,
  }),
  must("coverSurfaces", {
    say: [
      "Film over lamp, arm rest and chair; worktop twice.",
      "Film en lámpara, apoyabrazos y sillón; mesa con dos capas.",
    ],
    show: ["Cover the surfaces", "Cubrir las superficies"],
    does: [touch("barriers"), cover(...surfaces)],
    sec: 90,
  }),
  must("coverTools", {
    say: [
      "Bag machines, cord, power supply, wash and spray bottles.",
      "Enfunda máquinas, cable, fuente, lavador y atomizador.",
    ],
    show: ["Bag tools and bottles", "Enfundar equipo y frascos"],
    does: [cover("machine", "secondMachine", "cord", "powerSupply", "washBottle", "sprayBottle")],
    sec: 120,
  }),
  companionCovered(),
  sharpsContainerReady(),
  packsInDate([
    "Check cartridge and grip packs: sealed, dry, in date.",
    "Revisa envases de cartucho y grip: sellados, secos, vigentes.",
  ]),
  inkPoured(),
  must("bottlesAway", {
    say: [
      "Take every bottle away except the covered wash bottle.",
      "Retira todos los frascos, salvo el lavador cubierto.",
    ],
    show: ["Bottles away", "Retirar los frascos"],
    does: [takeAway("inkBottles", "antiseptic", "stencilFluid", "sprayBottle")],
    sec: 20,
  }),
  ...clientTimeOut(),
  ...skinPrepared(),
  ...changeGloves("sterileGloves", washHands),
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
      touch(
        "machine",
        "cord",
        "powerSupply",
        "washBottle",
        "worktop",
        "armRest",
        "lamp",
        "chair",
        "screen",
        "microphone",
      ),
    ],
    sec: 5,
  }),
];
