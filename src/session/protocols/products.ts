/**
 * Product slots with what commonly stands on a label. Invented and generic: the label in use is entered by the artist
 * and governs. Labelled contact times run from seconds to ten minutes; five minutes for a spray is common practice,
 * no source. Hand rub 20-30 s: WHO 2009.
 */
import type { Label, ProductSlot } from "../protocol";
import { type Both, text } from "./writing";

const label = (name: Both, contactSec: number, more: Partial<Label>): Label => ({
  name: text(name),
  contactSec,
  reapplyWithinSec: null,
  oneStep: false,
  afterwards: "wipe",
  expiry: null,
  ...more,
});

export const surfaceDisinfectantA: ProductSlot = {
  id: "surfaceDisinfectantA",
  use: "surfaceDisinfectant",
  label: label(["Surface disinfectant A, spray", "Desinfectante de superficies A, espray"], 300, {
    reapplyWithinSec: 240,
  }),
};

export const surfaceDisinfectantB: ProductSlot = {
  id: "surfaceDisinfectantB",
  use: "surfaceDisinfectant",
  label: label(["Surface disinfectant B, on towels", "Desinfectante de superficies B, con toallas"], 180, {
    reapplyWithinSec: 120,
  }),
};

export const surfaceWipesC: ProductSlot = {
  id: "surfaceWipesC",
  use: "surfaceDisinfectant",
  label: label(["Surface wipes C, one step", "Toallitas de superficies C, un paso"], 60, { oneStep: true }),
};

export const skinAntisepticA: ProductSlot = {
  id: "skinAntisepticA",
  use: "skinAntiseptic",
  label: label(["Skin antiseptic A", "Antiséptico de piel A"], 60, { afterwards: "airDry" }),
};

export const handRubA: ProductSlot = {
  id: "handRubA",
  use: "handRub",
  label: label(["Hand rub A", "Gel hidroalcohólico A"], 30, { afterwards: "airDry" }),
};
