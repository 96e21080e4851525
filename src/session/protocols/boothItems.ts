/**
 * The items of a convention booth. What the hall lends has been touched by strangers, so it starts soiled. The pen runs
 * on its own battery; disinfectant comes as wipes.
 */
import type { Item } from "../protocol";
import {
  away,
  clientSkin,
  commonSupplies,
  companionItems,
  disposable,
  pouredBottles,
  reusable,
  sharpsContainer,
  sterile,
} from "./items";

const lent = { condition: "soiled" } as const;

export const boothItems: readonly Item[] = [
  reusable(
    "lamp",
    "surface",
    { name: ["Lamp and its handle", "Lámpara y su asa"], calledAs: ["lamp", "lámpara"] },
    lent,
  ),
  reusable("boothTable", "surface", { name: ["Booth table", "Mesa del stand"], calledAs: ["table", "mesa"] }, lent),
  reusable("armRest", "surface", { name: ["Arm rest", "Apoyabrazos"], calledAs: ["arm rest", "apoyabrazos"] }, lent),
  reusable("chair", "surface", { name: ["Client chair", "Silla del cliente"], calledAs: ["chair", "silla"] }, lent),
  reusable("machine", "tool", {
    name: ["Battery pen machine", "Máquina inalámbrica"],
    calledAs: ["machine", "máquina"],
  }),
  reusable("secondMachine", "tool", {
    name: ["Second pen machine", "Segunda máquina"],
    calledAs: ["second machine", "segunda máquina"],
  }),
  reusable("washBottle", "bottle", { name: ["Wash bottle", "Frasco lavador"], calledAs: ["wash bottle", "lavador"] }),
  reusable("handRubBottle", "bottle", {
    name: ["Hand rub with pump", "Gel hidroalcohólico con bomba"],
    calledAs: ["hand rub", "gel"],
  }),
  reusable("wipesTub", "bottle", {
    name: ["Tub of disinfectant wipes", "Bote de toallitas desinfectantes"],
    calledAs: ["wipes tub", "bote"],
  }),
  ...companionItems,
  ...pouredBottles,
  sterile("needle", "sharp", "singleUse", {
    name: ["Cartridges, sterile packs", "Cartuchos, envases estériles"],
    calledAs: ["cartridge", "cartucho"],
  }),
  sterile("grip", "tool", "singleUse", {
    name: ["Single-use grip, sterile pack", "Grip desechable, envase estéril"],
    calledAs: ["grip", "grip"],
  }),
  ...commonSupplies,
  away(
    disposable(
      "pulledWipes",
      {
        name: ["Wipes pulled out beforehand", "Toallitas ya sacadas"],
        calledAs: ["wipes", "toallitas"],
      },
      { porous: true },
    ),
  ),
  sharpsContainer,
  clientSkin,
];

/** Under film, bag or sleeve while working. */
export const covered = [
  "machine",
  "washBottle",
  "boothTable",
  "armRest",
  "lamp",
  "screen",
  "chair",
  "secondMachine",
  "microphone",
] as const;
