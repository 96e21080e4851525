/** Pieces of a set-up that are the same at every station. */
import type { Step } from "../protocol";
import { skinAntisepticA } from "./products";
import { apply, type Both, cover, discard, must, open, touch } from "./writing";

/** The device that runs this companion is touched like anything else: it goes under film, its microphone too. */
export const companionCovered = (): Step =>
  must("coverScreen", {
    say: ["Film over the screen; cover the microphone.", "Film sobre la pantalla; cubre el micrófono."],
    show: ["Cover screen and microphone", "Cubrir pantalla y micrófono"],
    does: [touch("screenFilm"), cover("screen", "microphone")],
    sec: 40,
  });

/** 29 CFR 1910.1030 (d)(4)(iii)(A)(2): within reach, upright, never overfilled. */
export const sharpsContainerReady = (): Step =>
  must("sharpsContainerReady", {
    say: [
      "Look at the sharps container: open, upright, within reach, below its line.",
      "Mira el contenedor de punzantes: abierto, derecho, a mano, bajo la línea.",
    ],
    show: ["Sharps container ready", "Contenedor de punzantes listo"],
    sec: 10,
  });

export const packsInDate = (say: Both): Step =>
  must("packsInDate", {
    say,
    show: ["Packs sealed, dry, in date", "Envases sellados, secos, vigentes"],
    caution: [
      "Torn, wet, or out of date: it does not count as sterile.",
      "Roto, húmedo o caducado: no cuenta como estéril.",
    ],
    sec: 30,
  });

/** One client's dose; what is left in a cup never goes back. */
export const inkPoured = (): Step =>
  must("pourInk", {
    say: [
      "Pour in-date ink, antiseptic and stencil liquid into cups.",
      "Vierte tinta vigente, antiséptico y líquido en cápsulas.",
    ],
    show: ["Pour ink into cups", "Verter tinta en cápsulas"],
    caution: ["No label, or past its date: do not pour it.", "Sin etiqueta o caducada: no la viertas."],
    does: [touch("inkBottles", "antiseptic", "stencilFluid", "cups", "spareCups", "rinseCup", "towels")],
    sec: 120,
  });

/** The razor is a sharp from the moment it is opened. Skin antiseptic: until dry, as its label says. */
export const skinPrepared = (): Step[] => [
  must("shave", {
    say: ["Shave the skin; drop the razor straight into sharps.", "Rasura la piel; echa la rasuradora al contenedor."],
    show: ["Shave, razor into sharps", "Rasurar y al contenedor"],
    does: [open("razor"), touch("razor"), discard("sharps", "razor")],
    sec: 60,
  }),
  must("disinfectSkin", {
    say: ["Wipe the skin with antiseptic and let it dry.", "Pasa antiséptico por la piel y deja secar."],
    show: ["Antiseptic, let dry", "Antiséptico, dejar secar"],
    does: [touch("towels", "cups"), apply(skinAntisepticA.id, "skin")],
    sec: 60,
  }),
  must("placeStencil", {
    say: ["Place the stencil and let it dry.", "Coloca el esténcil y deja secar."],
    show: ["Place the stencil", "Colocar el esténcil"],
    does: [touch("stencil")],
    sec: 120,
  }),
];
