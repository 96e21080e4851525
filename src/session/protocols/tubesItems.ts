/** The items of the station with reusable steel tubes: critical, so sterilised between clients (Spaulding 1968). */
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

export const tubesItems: readonly Item[] = [
  reusable("lamp", "surface", { name: ["Lamp and its handle", "Lámpara y su asa"], calledAs: ["lamp", "lámpara"] }),
  reusable("worktop", "surface", { name: ["Worktop", "Mesa de trabajo"], calledAs: ["worktop", "mesa"] }),
  reusable("armRest", "surface", { name: ["Arm rest", "Apoyabrazos"], calledAs: ["arm rest", "apoyabrazos"] }),
  reusable("chair", "surface", { name: ["Client chair", "Sillón del cliente"], calledAs: ["chair", "sillón"] }),
  reusable("machine", "tool", { name: ["Liner machine", "Máquina de línea"], calledAs: ["liner", "máquina de línea"] }),
  reusable("secondMachine", "tool", {
    name: ["Shader machine", "Máquina de sombra"],
    calledAs: ["shader", "máquina de sombra"],
  }),
  reusable("cord", "tool", { name: ["Clip cord", "Cable de clip"], calledAs: ["cord", "cable"] }),
  reusable("powerSupply", "tool", { name: ["Power supply", "Fuente de poder"], calledAs: ["power supply", "fuente"] }),
  reusable("washBottle", "bottle", { name: ["Wash bottle", "Frasco lavador"], calledAs: ["wash bottle", "lavador"] }),
  reusable("disinfectantBottle", "bottle", {
    name: ["Surface disinfectant bottle", "Frasco de desinfectante"],
    calledAs: ["disinfectant", "desinfectante"],
  }),
  ...companionItems,
  ...pouredBottles,
  sterile("needle", "sharp", "singleUse", {
    name: ["Bar needles, sterile packs", "Agujas de barra, envases estériles"],
    calledAs: ["needle", "aguja"],
  }),
  sterile("tube", "tool", "reusable", {
    name: ["Steel tube with grip, for lines", "Tubo de acero con grip, línea"],
    calledAs: ["tube", "tubo"],
  }),
  sterile("secondTube", "tool", "reusable", {
    name: ["Steel tube with grip, for shading", "Tubo de acero con grip, sombra"],
    calledAs: ["second tube", "segundo tubo"],
  }),
  disposable("bands", { name: ["Rubber bands", "Ligas"], calledAs: ["bands", "ligas"] }),
  ...commonSupplies,
  away(
    disposable(
      "soakedTowels",
      {
        name: ["Towels soaked with disinfectant", "Toallas con desinfectante"],
        calledAs: ["soaked towels", "toallas mojadas"],
      },
      { porous: true },
    ),
  ),
  away(
    reusable("instrumentBox", "container", {
      name: ["Closed box for used instruments", "Caja cerrada de instrumental usado"],
      calledAs: ["instrument box", "caja"],
    }),
  ),
  sharpsContainer,
  clientSkin,
];

/** Under film, bag or sleeve while working. */
export const covered = [
  "machine",
  "cord",
  "washBottle",
  "worktop",
  "armRest",
  "lamp",
  "secondMachine",
  "screen",
  "chair",
  "powerSupply",
  "microphone",
] as const;
