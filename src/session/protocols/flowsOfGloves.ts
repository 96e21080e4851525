/**
 * Gloves, barriers and what should not have been touched. Contaminated gloves are changed, never cleaned:
 * 29 CFR 1910.1030 (d)(3)(ix), from memory; WHO 2009 for the hands in between.
 */
import type { EventId, Step } from "../protocol";
import { type EventKit, goOn } from "./flowParts";
import { changeGloves, glovesOff, glovesOn } from "./hands";
import { beforeBreakdown, look, must, touch } from "./writing";

export const flowsOfGloves = {
  freshGloves: (kit: EventKit) => [
    ...changeGloves("freshGloves", kit.hygiene),
    goOn("freshGlovesGoOn", touch(...kit.held)),
  ],

  tornGlove: (kit: EventKit) => [
    glovesOff("tornGloveOff"),
    must("tornGloveLook", {
      say: [
        "Look at that hand. Any cut: report an accident now.",
        "Mira esa mano. Si hay corte, avisa un accidente ya.",
      ],
      show: ["Look for a cut", "Buscar un corte"],
      sec: 10,
    }),
    kit.wash("tornGloveHands"),
    glovesOn("tornGloveOn"),
    goOn("tornGloveGoOn", touch(...kit.held)),
  ],

  tornBarrier: (kit: EventKit) => [
    must("tornBarrierOff", {
      say: ["Pull the torn barrier off, into the waste bag.", "Retira la barrera rota a la bolsa de residuos."],
      show: ["Torn barrier off", "Quitar barrera rota"],
      caution: [
        "What lay under it counts as soiled until disinfected.",
        "Lo que cubría cuenta como sucio hasta desinfectarlo.",
      ],
    }),
    ...changeGloves("tornBarrierGloves", kit.hygiene),
    beforeBreakdown("tornBarrierNew", {
      say: ["Put a new barrier over it.", "Pon una barrera nueva encima."],
      show: ["New barrier on", "Barrera nueva puesta"],
      does: [touch("barriers")],
      sec: 25,
    }),
    goOn("tornBarrierGoOn", touch(...kit.held)),
  ],

  dropped: (kit: EventKit) => [
    must("droppedPickUp", {
      say: [
        "Pick it up: sharps into sharps, single-use into waste, the rest aside.",
        "Recógelo: punzante al contenedor, desechable a residuos, el resto aparte.",
      ],
      show: ["Pick up, do not reuse", "Recoger, no reutilizar"],
      caution: [
        "A dropped needle is picked up with tongs; then ask for a new one.",
        "La aguja caída se recoge con pinzas; después pide otra.",
      ],
      sec: 20,
    }),
    ...changeGloves("droppedGloves", kit.hygiene),
    goOn("droppedGoOn", touch(...kit.held)),
  ],

  touched: (kit: EventKit) => [
    must("touchedLeave", {
      say: [
        "Leave it alone: it counts as soiled until disinfected.",
        "No lo uses: cuenta como sucio hasta desinfectarlo.",
      ],
      show: ["Leave it alone", "No volver a tocarlo"],
      sec: 5,
    }),
    ...changeGloves("touchedGloves", kit.hygiene),
    goOn("touchedGoOn", touch(...kit.held)),
  ],

  photo: (kit: EventKit) => [
    glovesOff("photoOff"),
    kit.hygiene("photoHands"),
    look("photoTake", {
      say: ["Take the picture, if the client agrees.", "Toma la foto, si el cliente acepta."],
      show: ["Take the picture", "Tomar la foto"],
      sec: 30,
    }),
    kit.hygiene("photoHandsAgain"),
    glovesOn("photoOn"),
    goOn("photoGoOn", touch(...kit.held)),
  ],
} satisfies Partial<Record<EventId, (kit: EventKit) => Step[]>>;
