/**
 * Hands and gloves, each a step that stands alone and that nobody may leave out.
 * WHO 2009: 40-60 s for the whole wash, 20-30 s for the rub; gloves never replace either, before and after.
 * 29 CFR 1910.1030 (d)(2)(v), from memory: hands are washed as soon as gloves come off.
 */
import type { Step } from "../protocol";
import { must } from "./writing";

export const jewelleryOff = (id: string): Step =>
  must(id, {
    say: ["Take off rings, watch and bracelets.", "Quítate anillos, reloj y pulseras."],
    show: ["Rings, watch, bracelets off", "Anillos, reloj, pulseras fuera"],
    sec: 20,
  });

export const washHands = (id: string): Step =>
  must(id, {
    say: [
      "Wash your hands for forty to sixty seconds, and dry them.",
      "Lávate las manos de cuarenta a sesenta segundos y sécalas.",
    ],
    show: ["Wash and dry hands", "Lavar y secar manos"],
    does: [[{ verb: "wash" }]],
    sec: 60,
  });

/** Where the station has no sink of its own: the shared one, and a rub again on return. */
export const washAtSharedSink = (id: string): Step =>
  must(id, {
    say: [
      "Walk to the shared sink; wash hands forty to sixty seconds.",
      "Ve al lavamanos común; lávate las manos de cuarenta a sesenta segundos.",
    ],
    show: ["Wash at shared sink", "Lavarse en lavamanos común"],
    caution: [
      "Doors and tap with a paper towel; never walk the hall in gloves.",
      "Puertas y grifo con papel; nunca cruces la sala con guantes.",
    ],
    does: [[{ verb: "wash" }]],
    sec: 240,
  });

/** Only where hands are not visibly soiled; WHO 2009. */
export const rubHands = (id: string): Step =>
  must(id, {
    say: [
      "Rub your hands with hand rub until they are dry.",
      "Frótate las manos con gel hidroalcohólico hasta que sequen.",
    ],
    show: ["Rub hands until dry", "Gel hasta que seque"],
    caution: [
      "Hands visibly soiled: go to the sink and wash them instead.",
      "Manos visiblemente sucias: ve al lavamanos y lávalas.",
    ],
    does: [[{ verb: "rub" }]],
    sec: 30,
  });

export const glovesOff = (id: string): Step =>
  must(id, {
    say: ["Take your gloves off, inside out.", "Quítate los guantes, del revés."],
    show: ["Gloves off", "Guantes fuera"],
    does: [[{ verb: "doff" }]],
    sec: 10,
  });

export const glovesOn = (id: string): Step =>
  must(id, {
    say: ["Put on fresh gloves.", "Ponte guantes nuevos."],
    show: ["Fresh gloves on", "Guantes nuevos puestos"],
    does: [[{ verb: "don" }]],
    sec: 15,
  });

/** How hands are made clean at this station: a wash where there is a sink, a rub where there is none. */
export type HandHygiene = (id: string) => Step;

/** Off, hands, on: never one without the others. Ids are the name with Off, Hands and On behind it. */
export const changeGloves = (name: string, hygiene: HandHygiene): Step[] => [
  glovesOff(`${name}Off`),
  hygiene(`${name}Hands`),
  glovesOn(`${name}On`),
];
