/**
 * Station with autoclaved tubes, before the client is touched. The packs come from the studio's own steriliser: turned
 * indicator and a passed cycle on record, or they are not sterile (CDC 2008, sterilising practices, from memory).
 */
import type { Step } from "../protocol";
import { clientTimeOut } from "./clientTimeOut";
import { changeGloves, glovesOn, jewelleryOff, washHands } from "./hands";
import { surfaceDisinfectantB } from "./products";
import { companionCovered, inkPoured, packsInDate, sharpsContainerReady, skinPrepared } from "./setUpParts";
import { apply, breakSkin, cover, must, open, preClean, takeAway, touch, wipe } from "./writing";

const surfaces = ["lamp", "worktop", "armRest", "chair"] as const;

export const tubesSetUp: Step[] = [
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
      "Wet lamp, worktop, arm rest and chair with soaked towels.",
      "Moja lámpara, mesa, apoyabrazos y sillón con toallas empapadas.",
    ],
    show: ["Wet the surfaces", "Mojar las superficies"],
    caution: ["Visibly wet for the whole time on the label.", "Visiblemente mojado todo el tiempo de la etiqueta."],
    does: [touch("disinfectantBottle"), apply(surfaceDisinfectantB.id, ...surfaces)],
    sec: 90,
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
      "Bag both machines, clip cord, power supply and wash bottle.",
      "Enfunda ambas máquinas, cable, fuente y lavador.",
    ],
    show: ["Bag tools and bottle", "Enfundar equipo y lavador"],
    does: [cover("machine", "secondMachine", "cord", "powerSupply", "washBottle")],
    sec: 120,
  }),
  companionCovered(),
  sharpsContainerReady(),
  packsInDate([
    "Check tube and needle packs: indicator turned, sealed, dry, in date.",
    "Revisa tubos y agujas: indicador virado, sellados, secos, vigentes.",
  ]),
  inkPoured(),
  must("bottlesAway", {
    say: [
      "Take every bottle away except the covered wash bottle.",
      "Retira todos los frascos, salvo el lavador cubierto.",
    ],
    show: ["Bottles away", "Retirar los frascos"],
    does: [takeAway("inkBottles", "antiseptic", "stencilFluid", "disinfectantBottle")],
    sec: 20,
  }),
  ...clientTimeOut(),
  ...skinPrepared(),
  ...changeGloves("sterileGloves", washHands),
  must("fitSterile", {
    say: ["Open both tubes and a needle; fit the liner.", "Abre ambos tubos y una aguja; arma la de línea."],
    show: ["Open tubes and needle", "Abrir tubos y aguja"],
    caution: [
      "Touch no point and no tip. Second tube stays on its wrap.",
      "No toques puntas. El segundo tubo queda en su envoltura.",
    ],
    does: [open("tube", "secondTube", "needle"), touch("bands", "machine")],
    sec: 60,
  }),
  must("begin", {
    say: [
      "Begin. From the first line your gloves are soiled.",
      "Empieza. Desde la primera línea tus guantes están sucios.",
    ],
    show: ["Begin the tattoo", "Empezar el tatuaje"],
    does: [
      breakSkin("needle", "tube", "towels", "cups", "rinseCup"),
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
