/**
 * Needles, ink and machines. The old needle is in the sharps container before a new one is opened:
 * 29 CFR 1910.1030 (d)(4)(iii)(A)(1).
 */
import type { EventId, Step } from "../protocol";
import { type EventKit, goOn, needleIntoSharps, openNeedle } from "./flowParts";
import { changeGloves } from "./hands";
import { breakSkin, bring, must, open, park, takeAway, touch } from "./writing";

export const flowsOfNeedles = {
  newNeedle: (kit: EventKit) => [
    needleIntoSharps("newNeedleSharps", kit),
    ...changeGloves("newNeedleGloves", kit.hygiene),
    openNeedle("newNeedleOpen", kit),
    goOn("newNeedleGoOn", touch(...kit.held), breakSkin("needle")),
  ],

  parkNeedle: (kit: EventKit) => [
    must("parkNeedlePark", {
      say: kit.words.park,
      show: ["Park it, points covered", "Apartar, puntas cubiertas"],
      caution: ["For this client only.", "Solo para este cliente."],
      does: [park("needle")],
      sec: 10,
    }),
    ...changeGloves("parkNeedleGloves", kit.hygiene),
    openNeedle("parkNeedleOpen", kit),
    goOn("parkNeedleGoOn", touch(...kit.heldAfterPark), breakSkin("needle", ...kit.secondTip)),
  ],

  moreInk: (kit: EventKit) => [
    ...changeGloves("moreInkGloves", kit.hygiene),
    must("moreInkPour", {
      say: [
        "Pour in-date ink into a spare cup, touching no rim.",
        "Vierte tinta vigente en una cápsula sin rozar el borde.",
      ],
      show: ["Pour into spare cup", "Verter en cápsula nueva"],
      caution: ["Never top up a used cup.", "Nunca rellenes una cápsula usada."],
      does: [touch("spareCups"), bring("inkBottles"), touch("inkBottles")],
      sec: 30,
    }),
    must("moreInkAway", {
      say: ["Take the ink bottle away.", "Retira el frasco de tinta."],
      show: ["Ink bottle away", "Retirar frasco de tinta"],
      does: [takeAway("inkBottles")],
      sec: 10,
    }),
    goOn("moreInkGoOn", touch(...kit.held)),
  ],

  machineSwap: (kit: EventKit) => [
    needleIntoSharps("machineSwapSharps", kit),
    ...changeGloves("machineSwapGloves", kit.hygiene),
    must("machineSwapOpen", {
      say: kit.words.swapIn,
      show: ["New needle, second machine", "Aguja nueva, segunda máquina"],
      caution: ["Sealed, dry and in date, or take another.", "Sellada, seca y vigente; si no, toma otra."],
      does: [open("needle"), touch(...kit.heldSecond)],
      sec: 30,
    }),
    goOn("machineSwapGoOn", touch(...kit.heldSecond), breakSkin("needle", ...kit.secondTip)),
  ],
} satisfies Partial<Record<EventId, (kit: EventKit) => Step[]>>;
