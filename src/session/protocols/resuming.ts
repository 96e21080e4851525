/**
 * Going on after an exposure: the sharp discarded, hands washed, fresh gloves, what blood reached treated for the whole
 * time of the label, new cups and needle, the client told. The accident itself has its own record. What leads back to
 * the skin is walked only after an accident at work; while the station is built or taken apart it falls away.
 */
import type { Step } from "../protocol";
import { changeGloves, type HandHygiene } from "./hands";
import {
  apply,
  type Both,
  backToTheSkin,
  bring,
  cover,
  discard,
  discardAllSharps,
  must,
  open,
  preClean,
  takeAway,
  touch,
  uncover,
  wipe,
} from "./writing";

export interface ResumingKit {
  /** First with soap and water; between gloves as the station allows. */
  readonly wash: HandHygiene;
  readonly hygiene: HandHygiene;
  readonly product: string;
  /** Covered surfaces that blood reaches first, as ids and as said. */
  readonly surfaces: readonly string[];
  readonly surfacesSaid: Both;
  /** What holds the new needle. */
  readonly held: readonly string[];
  readonly openNew: Both;
  /** A label that cleans and disinfects in one step needs no cleaning before it. */
  readonly oneStep: boolean;
}

export function resuming(kit: ResumingKit): Step[] {
  const [surfacesEn, surfacesEs] = kit.surfacesSaid;
  return [
    ...changeGloves("resumingGloves", kit.wash),
    must("resumingSharps", {
      say: ["Put every used needle into the sharps container.", "Echa cada aguja usada al contenedor de punzantes."],
      show: ["Used needles into sharps", "Agujas usadas al contenedor"],
      does: [discardAllSharps("needle")],
    }),
    backToTheSkin("resumingBlood", {
      say: kit.oneStep
        ? [`Throw out cups and towels; uncover ${surfacesEn}.`, `Desecha cápsulas y toallas; descubre ${surfacesEs}.`]
        : [
            `Throw out cups and towels; uncover and clean ${surfacesEn}.`,
            `Desecha cápsulas y toallas; descubre y limpia ${surfacesEs}.`,
          ],
      show: ["Uncover what blood reached", "Descubrir lo alcanzado"],
      caution: [
        "Blood anywhere else is cleaned and treated too.",
        "La sangre en otro lugar también se limpia y trata.",
      ],
      does: [
        discard("contaminated", "cups", "rinseCup", "towels"),
        uncover(...kit.surfaces),
        kit.oneStep ? [] : preClean(...kit.surfaces),
      ],
      sec: 90,
    }),
    backToTheSkin("resumingWet", {
      say: [`Wet ${surfacesEn} with disinfectant.`, `Moja ${surfacesEs} con desinfectante.`],
      show: ["Wet what blood reached", "Mojar lo alcanzado"],
      does: [apply(kit.product, ...kit.surfaces)],
      sec: 30,
    }),
    ...changeGloves("resumingFresh", kit.hygiene),
    backToTheSkin("resumingWipe", {
      say: [`Wipe ${surfacesEn} dry with fresh towels.`, `Seca ${surfacesEs} con toallas nuevas.`],
      show: ["Wipe dry", "Secar bien"],
      does: [bring("freshTowels"), wipe(...kit.surfaces)],
      sec: 30,
    }),
    backToTheSkin("resumingSetOut", {
      say: ["Cover them again and set out new cups.", "Cúbrelos de nuevo y pon cápsulas nuevas."],
      show: ["Cover, new cups", "Cubrir, cápsulas nuevas"],
      // The accident may have come between pouring more ink and putting the bottle away.
      caution: ["Take the ink bottle away.", "Retira el frasco de tinta."],
      does: [touch("barriers"), cover(...kit.surfaces), takeAway("inkBottles"), touch("spareCups")],
      sec: 60,
    }),
    backToTheSkin("resumingNeedle", {
      say: kit.openNew,
      show: ["New needle", "Aguja nueva"],
      does: [open("needle"), touch(...kit.held)],
      sec: 30,
    }),
    must("resumingTold", {
      say: [
        "Tell the client what happened. Go on only if they agree.",
        "Cuéntale al cliente lo ocurrido. Sigue solo si acepta.",
      ],
      show: ["Client told and agrees", "Cliente informado y conforme"],
      sec: 60,
    }),
  ];
}
