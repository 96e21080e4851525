/**
 * What can happen while working, each with a short flow. Every flow that goes back to the skin says so in a last step,
 * so that nobody takes gloves for clean that are at work again. Gloves over bloody work are changed, never cleaned:
 * 29 CFR 1910.1030 (d)(3)(ix), from memory; WHO 2009 for hands in between.
 */
import { type Effect, type EventFlow, type EventId, eventIds, type Step } from "../protocol";
import { changeGloves, glovesOff, glovesOn, type HandHygiene } from "./hands";
import { type Both, breakSkin, bring, discard, look, must, open, park, takeAway, touch, unpark } from "./writing";

/** What differs between stations. */
export interface EventKit {
  /** Between gloves while the hands are not visibly soiled. */
  readonly hygiene: HandHygiene;
  /** With soap and water, wherever the sink is. */
  readonly wash: HandHygiene;
  /** What a working hand holds: the machine and what sits in it. */
  readonly held: readonly string[];
  /** The same with the second machine. */
  readonly heldSecond: readonly string[];
  /** What is held once a needle is parked and another fitted. */
  readonly heldAfterPark: readonly string[];
  /** Sterile parts, opened at set-up, that meet blood only with the second needle. */
  readonly secondTip: readonly string[];
  readonly covered: readonly string[];
  readonly droppable: readonly string[];
  readonly touchable: readonly string[];
  readonly words: {
    readonly intoSharps: Both;
    readonly openNew: Both;
    readonly park: Both;
    readonly takeUp: Both;
    readonly swapIn: Both;
  };
}

export function eventFlows(kit: EventKit): EventFlow[] {
  const asks: Partial<Record<EventId, readonly string[]>> = {
    tornBarrier: kit.covered,
    dropped: kit.droppable,
    touched: kit.touchable,
  };
  return eventIds.map((event) => ({
    event,
    asksItem: [...(asks[event] ?? [])],
    steps: flows[event](kit),
    onwards: event === "stopEarly" ? "dressing" : "continue",
  }));
}

const goOn = (id: string, ...does: Effect[][]): Step =>
  must(id, {
    say: ["Go on. Your gloves count as soiled again.", "Continúa. Tus guantes vuelven a contar como sucios."],
    show: ["Back to the skin", "De vuelta a la piel"],
    does,
    sec: 5,
  });

const needleIntoSharps = (id: string, { words }: EventKit): Step =>
  must(id, {
    say: words.intoSharps,
    show: ["Needle into sharps", "Aguja al contenedor"],
    caution: ["Never recap, bend or hand it over.", "No la reencapuches, dobles ni pases en mano."],
    does: [discard("sharps", "needle")],
  });

const openNeedle = (id: string, { words }: EventKit): Step =>
  must(id, {
    say: words.openNew,
    show: ["Open a new needle", "Abrir aguja nueva"],
    caution: ["Sealed, dry and in date, or take another.", "Sellada, seca y vigente; si no, toma otra."],
    does: [open("needle")],
    sec: 20,
  });

const flows: Record<EventId, (kit: EventKit) => Step[]> = {
  freshGloves: (kit) => [...changeGloves("freshGloves", kit.hygiene), goOn("freshGlovesGoOn", touch(...kit.held))],

  tornGlove: (kit) => [
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

  tornBarrier: (kit) => [
    must("tornBarrierOff", {
      say: ["Pull the torn barrier off, into the waste bag.", "Retira la barrera rota a la bolsa de residuos."],
      show: ["Torn barrier off", "Quitar barrera rota"],
      caution: [
        "What lay under it counts as soiled until disinfected.",
        "Lo que cubría cuenta como sucio hasta desinfectarlo.",
      ],
    }),
    ...changeGloves("tornBarrierGloves", kit.hygiene),
    must("tornBarrierNew", {
      say: ["Put a new barrier over it.", "Pon una barrera nueva encima."],
      show: ["New barrier on", "Barrera nueva puesta"],
      does: [touch("barriers")],
      sec: 25,
    }),
    goOn("tornBarrierGoOn", touch(...kit.held)),
  ],

  newNeedle: (kit) => [
    needleIntoSharps("newNeedleSharps", kit),
    ...changeGloves("newNeedleGloves", kit.hygiene),
    openNeedle("newNeedleOpen", kit),
    goOn("newNeedleGoOn", touch(...kit.held), breakSkin("needle")),
  ],

  parkNeedle: (kit) => [
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

  moreInk: (kit) => [
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

  dropped: (kit) => [
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

  touched: (kit) => [
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

  photo: (kit) => [
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

  machineSwap: (kit) => [
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

  takeBreak: (kit) => [
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
    must("takeBreakGoOn", {
      say: kit.words.takeUp,
      show: ["Take it up again", "Retomar la aguja"],
      does: [unpark("needle"), touch(...kit.held)],
      sec: 10,
    }),
  ],

  clientLeaves: (kit) => [
    must("clientLeavesCover", {
      say: ["Cover the tattoo with a clean wrap.", "Cubre el tatuaje con una cobertura limpia."],
      show: ["Cover the tattoo", "Cubrir el tatuaje"],
      does: [breakSkin("wrap")],
      sec: 40,
    }),
    needleIntoSharps("clientLeavesSharps", kit),
    glovesOff("clientLeavesOff"),
    kit.wash("clientLeavesHands"),
  ],

  clientReturns: (kit) => [
    kit.hygiene("clientReturnsHands"),
    glovesOn("clientReturnsOn"),
    openNeedle("clientReturnsOpen", kit),
    must("clientReturnsGoOn", {
      say: ["Take the wrap off into the waste, and go on.", "Retira la cobertura a residuos y continúa."],
      show: ["Wrap off, go on", "Quitar cobertura y seguir"],
      does: [discard("contaminated", "wrap"), touch(...kit.held), breakSkin("needle")],
      sec: 20,
    }),
  ],

  clientUnwell: (kit) => [
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
};
