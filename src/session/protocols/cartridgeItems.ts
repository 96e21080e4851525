/** The items of the cartridge station. Motors cannot be sterilised: machines are bagged, then disinfected. */
import type { Item } from "../protocol";
import { clientSkin, commonSupplies, companionItems, pouredBottles, reusable, sharpsContainer, sterile } from "./items";

export const cartridgeItems: readonly Item[] = [
  reusable("lamp", "surface", { name: ["Lamp and its handle", "Lámpara y su asa"], calledAs: ["lamp", "lámpara"] }),
  reusable("worktop", "surface", { name: ["Worktop", "Mesa de trabajo"], calledAs: ["worktop", "mesa"] }),
  reusable("armRest", "surface", { name: ["Arm rest", "Apoyabrazos"], calledAs: ["arm rest", "apoyabrazos"] }),
  reusable("chair", "surface", { name: ["Client chair", "Sillón del cliente"], calledAs: ["chair", "sillón"] }),
  reusable("machine", "tool", {
    name: ["Cartridge machine", "Máquina de cartuchos"],
    calledAs: ["machine", "máquina"],
  }),
  reusable("secondMachine", "tool", {
    name: ["Second machine", "Segunda máquina"],
    calledAs: ["second machine", "segunda máquina"],
  }),
  reusable("cord", "tool", { name: ["Power cord", "Cable de corriente"], calledAs: ["cord", "cable"] }),
  reusable("powerSupply", "tool", { name: ["Power supply", "Fuente de poder"], calledAs: ["power supply", "fuente"] }),
  reusable("washBottle", "bottle", { name: ["Wash bottle", "Frasco lavador"], calledAs: ["wash bottle", "lavador"] }),
  reusable("sprayBottle", "bottle", {
    name: ["Disinfectant spray bottle", "Atomizador de desinfectante"],
    calledAs: ["spray bottle", "atomizador"],
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
  "screen",
  "chair",
  "powerSupply",
  "secondMachine",
  "microphone",
] as const;
