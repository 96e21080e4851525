/** Pieces of a breakdown that are the same at every station. */
import type { Step } from "../protocol";
import { glovesOff, type HandHygiene } from "./hands";
import { type Both, bring, countSharps, discard, discardAllSharps, look, must } from "./writing";

/** 29 CFR 1910.1030 (d)(4)(iii)(A)(1): as soon as feasible, so before anything else; then counted. */
export const sharpsFirst = (say: Both): Step[] => [
  must("sharpsFirst", {
    say,
    show: ["All sharps into container", "Punzantes al contenedor"],
    caution: ["Parked ones too. Never by hand out of the container.", "También los apartados. Nunca metas la mano."],
    does: [discardAllSharps("needle")],
    sec: 30,
  }),
  countSharps("countSharps", {
    say: ["Count the sharps you put in during this session.", "Cuenta los punzantes desechados en esta sesión."],
    show: ["Count the sharps", "Contar los punzantes"],
    caution: ["The razor counts too.", "La rasuradora también cuenta."],
    sec: 20,
  }),
];

/** Fetched with clean gloves, before the dirty work; machines rest on the plate (common practice, no source). */
export const layOutForCleaning = (say: Both, ...disinfectant: string[]): Step =>
  must("layOutForCleaning", {
    say,
    show: ["Bring plate, towels, disinfectant", "Traer bandeja, toallas, desinfectante"],
    does: [bring("plate", "freshTowels", ...disinfectant)],
    sec: 30,
  });

/** Everything disposable that lay on the station goes, used or not (common practice, no source). */
export const disposablesOut = (say: Both, ...more: string[]): Step =>
  must("disposablesOut", {
    say,
    show: ["Disposables into waste bag", "Desechables a la bolsa"],
    caution: ["Used or not. Leftover ink too.", "Usados o no. También la tinta sobrante."],
    does: [
      discard(
        "contaminated",
        ...more,
        "cups",
        "spareCups",
        "rinseCup",
        "towels",
        "stencil",
        "wrap",
        "saline",
        "dressing",
      ),
    ],
    sec: 60,
  });

/** The bag is closed with the last gloves; then hands. */
export const glovesAndHandsLast = (hygiene: HandHygiene, ...more: string[]): Step[] => [
  must("bagOut", {
    say: [
      "Plate and towels into the bag; close it for contaminated waste.",
      "Bandeja y toallas a la bolsa; ciérrala para residuos contaminados.",
    ],
    show: ["Close the waste bag", "Cerrar la bolsa"],
    caution: ["Never a household bin. The local stream rules.", "Nunca a la basura doméstica. Rige la norma local."],
    does: [discard("contaminated", ...more, "plate", "freshTowels", "wasteBag")],
    sec: 60,
  }),
  glovesOff("lastGlovesOff"),
  hygiene("lastHands"),
];

export const restock = (): Step =>
  look("restock", {
    say: [
      "Restock packs, gloves and film for the next client.",
      "Repón envases, guantes y film para el próximo cliente.",
    ],
    show: ["Restock the station", "Reponer la estación"],
    sec: 90,
  });
