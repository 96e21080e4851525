/**
 * Pauses and people. Sharps are secured before anyone leaves; the companion gives no treatment advice.
 */
import type { EventId, Step } from "../protocol";
import { type EventKit, needleIntoSharps, openNeedle } from "./flowParts";
import { glovesOff, glovesOn } from "./hands";
import { backToTheSkin, breakSkin, cover, discard, look, must, park, takeAway, touch, unpark } from "./writing";

export const flowsOfPeople = {
  takeBreak: (kit: EventKit) => [
    must("takeBreakPark", {
      say: kit.words.park,
      show: ["Park it, points covered", "Apartar, puntas cubiertas"],
      does: [park("needle")],
      sec: 10,
    }),
    glovesOff("takeBreakOff"),
    kit.wash("takeBreakHands"),
    kit.hygiene("takeBreakHandsAgain"),
    glovesOn("takeBreakOn"),
    backToTheSkin("takeBreakGoOn", {
      say: kit.words.takeUp,
      show: ["Take it up again", "Retomar la aguja"],
      does: [unpark("needle"), touch(...kit.held)],
      sec: 10,
    }),
  ],

  clientLeaves: (kit: EventKit) => [
    must("clientLeavesCover", {
      say: ["Cover the tattoo with a clean wrap.", "Cubre el tatuaje con una cobertura limpia."],
      show: ["Cover the tattoo", "Cubrir el tatuaje"],
      // It goes with the client.
      does: [breakSkin("wrap"), takeAway("wrap"), cover("skin")],
      sec: 40,
    }),
    needleIntoSharps("clientLeavesSharps", kit),
    glovesOff("clientLeavesOff"),
    kit.wash("clientLeavesHands"),
  ],

  clientReturns: (kit: EventKit) => [
    kit.hygiene("clientReturnsHands"),
    glovesOn("clientReturnsOn"),
    openNeedle("clientReturnsOpen", kit),
    backToTheSkin("clientReturnsGoOn", {
      say: ["Take the wrap off into the waste, and go on.", "Retira la cobertura a residuos y continúa."],
      show: ["Wrap off, go on", "Quitar cobertura y seguir"],
      does: [discard("contaminated", "wrap"), touch(...kit.held), breakSkin("needle")],
      sec: 20,
    }),
  ],

  clientUnwell: (kit: EventKit) => [
    must("clientUnwellStop", {
      say: ["Stop. If in doubt, call the emergency number first.", "Para. Ante la duda, llama primero a emergencias."],
      show: ["Stop. Emergency number first", "Para. Emergencias primero"],
      caution: ["Do not leave the client alone.", "No dejes solo al cliente."],
      sec: 10,
    }),
    needleIntoSharps("clientUnwellSharps", kit),
    glovesOff("clientUnwellOff"),
    kit.wash("clientUnwellHands"),
    must("clientUnwellDecide", {
      say: [
        "Decide: report the client back in, or end for today.",
        "Decide: avisa que el cliente vuelve o termina por hoy.",
      ],
      show: ["Go on, or end", "Seguir o terminar"],
      caution: ["In doubt, end for today.", "Ante la duda, termina por hoy."],
      sec: 30,
    }),
  ],

  stopEarly: () => [
    must("stopEarlyLayDown", {
      say: ["Lay the machine down, needle away from everyone.", "Deja la máquina con la aguja lejos de todos."],
      show: ["Lay the machine down", "Dejar la máquina"],
      sec: 10,
    }),
  ],

  note: () => [
    look("noteWrite", {
      say: ["Write this note down after the session.", "Escribe esta nota después de la sesión."],
      show: ["Note marked here", "Nota marcada aquí"],
      sec: 5,
    }),
  ],
} satisfies Partial<Record<EventId, (kit: EventKit) => Step[]>>;
