/**
 * After the last line: fresh gloves, the tattoo cleaned and covered from packs opened now, and the studio's written
 * sheet. The sheet advises; the companion does not. The same gloves then carry the needle to the sharps container.
 */
import type { Step } from "../protocol";
import { changeGloves, type HandHygiene } from "./hands";
import { breakSkin, bring, cover, must, open } from "./writing";

export const dressing = (hygiene: HandHygiene): Step[] => [
  ...changeGloves("dressingGloves", hygiene),
  must("rinseTattoo", {
    say: [
      "Open saline and dressing, then rinse the tattoo clean.",
      "Abre suero y apósito; después enjuaga el tatuaje.",
    ],
    show: ["Rinse the tattoo", "Enjuagar el tatuaje"],
    caution: ["Both opened before the first touch of the skin.", "Ambos abiertos antes de tocar la piel."],
    does: [bring("saline", "dressing"), open("saline", "dressing"), breakSkin("saline")],
    sec: 60,
  }),
  must("coverTattoo", {
    say: ["Cover the tattoo with the dressing.", "Cubre el tatuaje con el apósito."],
    show: ["Cover the tattoo", "Cubrir el tatuaje"],
    does: [breakSkin("dressing"), cover("skin")],
    sec: 60,
  }),
  must("aftercareSheet", {
    say: [
      "Have the client take the aftercare sheet and read when to seek care.",
      "Que el cliente tome la hoja de cuidados y lea cuándo consultar.",
    ],
    show: ["Sheet and when-to-seek-care given", "Hoja de cuidados entregada"],
    caution: [
      "The client takes it from the holder; your gloves do not touch it.",
      "El cliente la toma del soporte; tus guantes no la tocan.",
    ],
    sec: 30,
  }),
];
