/**
 * The things at a station. Spaulding 1968: what goes through skin is critical, what touches intact skin or only gloves
 * is noncritical. Items common to the three bundled protocols stand here by name; each protocol adds its own.
 */
import type { Item } from "../protocol";
import { type Both, text } from "./writing";

interface Thing {
  readonly name: Both;
  readonly calledAs: Both;
}

const base = (id: string, { name, calledAs }: Thing) => ({ id, name: text(name), calledAs: text(calledAs) });
const clean = { condition: "clean", barrier: "none", at: "station" } as const;

/** A thing that stays from client to client and touches at most intact skin. */
export const reusable = (id: string, role: Item["role"], thing: Thing, starts: Partial<Item["starts"]> = {}): Item => ({
  ...base(id, thing),
  role,
  spaulding: "noncritical",
  use: "reusable",
  porous: false,
  starts: { ...clean, ...starts },
  hasLot: false,
});

/** Clean, for one client, thrown away whether used or not (common practice, no source). */
export const disposable = (id: string, thing: Thing, more: Partial<Item> = {}): Item => ({
  ...base(id, thing),
  role: "supply",
  spaulding: "noncritical",
  use: "singleUse",
  porous: false,
  starts: clean,
  hasLot: false,
  ...more,
});

/** Sterile in its pack, with a lot and an expiry that are asked for. */
export const sterile = (id: string, role: Item["role"], use: Item["use"], thing: Thing): Item => ({
  ...base(id, thing),
  role,
  spaulding: "critical",
  use,
  porous: false,
  starts: { ...clean, condition: "sterile" },
  hasLot: true,
});

/** Waits in its cupboard until a step brings it. */
export const away = (item: Item): Item => ({ ...item, starts: { ...item.starts, at: "away" } });

export const device = (id: string, thing: Thing): Item => reusable(id, "device", thing);

/** The companion's own device, its film and its microphone are items like any other. */
export const companionItems: readonly Item[] = [
  device("screen", {
    name: ["Device that runs this companion", "Dispositivo de este asistente"],
    calledAs: ["screen", "pantalla"],
  }),
  disposable("screenFilm", {
    name: ["Film over the device", "Film del dispositivo"],
    calledAs: ["screen film", "film de pantalla"],
  }),
  device("microphone", { name: ["Microphone", "Micrófono"], calledAs: ["microphone", "micrófono"] }),
];

/** Single-use things that every station lays out. */
export const commonSupplies: readonly Item[] = [
  disposable("barriers", {
    name: ["Film, bags and sleeves", "Film, bolsas y fundas"],
    calledAs: ["barriers", "barreras"],
  }),
  disposable("cups", { name: ["Ink cups", "Cápsulas de tinta"], calledAs: ["cups", "cápsulas"] }),
  disposable("spareCups", {
    name: ["Spare ink cups, stacked", "Cápsulas de repuesto"],
    calledAs: ["spare cups", "cápsulas de repuesto"],
  }),
  disposable("rinseCup", { name: ["Rinse cup", "Vaso de enjuague"], calledAs: ["rinse cup", "vaso"] }),
  disposable(
    "towels",
    { name: ["Paper towels", "Toallas de papel"], calledAs: ["towels", "toallas"] },
    { porous: true },
  ),
  disposable(
    "stencil",
    { name: ["Stencil paper", "Papel de esténcil"], calledAs: ["stencil", "esténcil"] },
    { porous: true },
  ),
  disposable("wrap", {
    name: ["Wound wrap for a pause", "Cobertura para la pausa"],
    calledAs: ["wrap", "cobertura"],
  }),
  disposable(
    "wasteBag",
    { name: ["Waste bag", "Bolsa de residuos"], calledAs: ["bag", "bolsa"] },
    { role: "container" },
  ),
  disposable("razor", { name: ["Razor", "Rasuradora"], calledAs: ["razor", "rasuradora"] }, { role: "sharp" }),
  away(
    sterile("dressing", "supply", "singleUse", {
      name: ["Dressing and its pack", "Apósito y su envase"],
      calledAs: ["dressing", "apósito"],
    }),
  ),
  away(
    sterile("saline", "supply", "singleUse", {
      name: ["Saline pod", "Monodosis de suero"],
      calledAs: ["saline", "suero"],
    }),
  ),
  away(
    disposable(
      "freshTowels",
      {
        name: ["Fresh towels for wiping down", "Toallas para el repaso"],
        calledAs: ["fresh towels", "toallas nuevas"],
      },
      { porous: true },
    ),
  ),
  away(disposable("plate", { name: ["Disposable plate", "Bandeja desechable"], calledAs: ["plate", "bandeja"] })),
];

/**
 * Where the client is tattooed. Antiseptic goes on it before the first line; it is a wound then, and covered before the
 * client leaves. What its class and use say of things that stay is not asked of it.
 */
export const clientSkin: Item = {
  ...reusable("skin", "skin", { name: ["The client’s skin", "La piel del cliente"], calledAs: ["skin", "piel"] }),
  spaulding: "semicritical",
};

/** Bottles that are poured from and then leave; nothing in a bottle stays within reach (common practice, no source). */
export const pouredBottles: readonly Item[] = [
  {
    ...reusable("inkBottles", "bottle", { name: ["Ink bottles", "Frascos de tinta"], calledAs: ["ink", "tinta"] }),
    hasLot: true,
  },
  reusable("antiseptic", "bottle", {
    name: ["Skin antiseptic bottle", "Frasco de antiséptico"],
    calledAs: ["antiseptic", "antiséptico"],
  }),
  reusable("stencilFluid", "bottle", {
    name: ["Stencil liquid bottle", "Frasco de líquido de esténcil"],
    calledAs: ["stencil liquid", "líquido"],
  }),
];

/** Held upright and dropped into, never handled in use; 29 CFR 1910.1030 (d)(4)(iii)(A)(2). */
export const sharpsContainer: Item = reusable("sharpsContainer", "container", {
  name: ["Sharps container", "Contenedor de punzantes"],
  calledAs: ["sharps container", "contenedor"],
});
