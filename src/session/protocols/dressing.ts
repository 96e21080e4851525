/**
 * After the last line: fresh gloves, the tattoo cleaned and covered from packs opened now, and the studio's written
 * sheet. The sheet advises; the companion does not. The same gloves then carry the needle to the sharps container.
 */
import type { Step } from "../protocol";
import { changeGloves, type HandHygiene } from "./hands";
import { bring, may, must, open, takeAway, touch } from "./writing";

export const dressing = (hygiene: HandHygiene): Step[] => [
  ...changeGloves("dressingGloves", hygiene),
  may("rinseTattoo", {
    say: ["Open the saline and rinse the tattoo clean.", "Abre el suero y enjuaga el tatuaje."],
    show: ["Rinse the tattoo", "Enjuagar el tatuaje"],
    does: [bring("saline"), open("saline"), touch("saline")],
    sec: 60,
  }),
  must("coverTattoo", {
    say: ["Open the dressing and cover the tattoo.", "Abre el apósito y cubre el tatuaje."],
    show: ["Cover the tattoo", "Cubrir el tatuaje"],
    does: [bring("dressing"), open("dressing"), touch("dressing"), takeAway("dressing")],
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
