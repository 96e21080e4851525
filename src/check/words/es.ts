/** The words of a check in Spanish. */
import type { CheckWords } from "./words";

const bloodborne = "29 CFR 1910.1030";
const common = "práctica común, sin fuente";
const memory = "de memoria";
const gloveUse = "uso de guantes, CDC y OMS 2009";
const spaulding = "Spaulding 1968; CDC 2008, tabla 1";
const asSoon = `${bloodborne}(d)(4)(iii)(A)(1): en cuanto se pueda`;
const label = "la etiqueta del producto";
const neha = "código modelo de arte corporal de la NEHA";

export const checkEs: CheckWords = {
  language: "es",
  rules: {
    handsBeforeGloves: {
      words: "Las manos se lavan o se frotan antes de ponerse guantes.",
      source: "higiene de manos, OMS 2009; uso de guantes, CDC",
    },
    glovesAreNotWashed: {
      words: "Los guantes se quitan antes de lavarse las manos; nunca se lavan para usarlos otra vez.",
      source: `${bloodborne}(d)(3)(ix)(B), ${memory}`,
    },
    oneGloveOverAnother: {
      words: "Los guantes usados se quitan antes de ponerse otros.",
      source: `${bloodborne}(d)(3)(ix)(A), ${memory}`,
    },
    handsAfterGloves: {
      words: "Las manos se lavan o se frotan en cuanto se quitan los guantes.",
      source: `${bloodborne}(d)(2)(v); OMS 2009`,
    },
    cleanHandsToTouch: {
      words: "Nada de la estación se toca con las manos sin lavar.",
      source: "OMS 2009, antes del contacto",
    },
    soiledGlovesOnClean: {
      words: "Los guantes sucios no tocan nada limpio que no tenga barrera.",
      source: `${gloveUse}: los guantes llevan de un sitio a otro`,
    },
    freshGlovesForCleanWork: {
      words: "Los guantes se cambian entre el trabajo sucio y el limpio.",
      source: `${gloveUse}: de un sitio sucio a uno limpio`,
    },
    damagedOrSoiledGlovesChanged: {
      words: "Los guantes se cambian si se rompen, si los ensucia algo imprevisto o tras un accidente.",
      source: `${gloveUse}; ${bloodborne}(d)(3)(ix)(A)`,
    },
    glovesForDirtyWork: {
      words: "La piel se rompe y lo usado se maneja con guantes puestos.",
      source: `${bloodborne}(d)(3)(ix)`,
    },
    skinPrepared: {
      words: "El antiséptico se pone en la piel antes de la primera línea.",
      source: common,
    },
    packsOpenedClean: {
      words: "Los envases estériles se abren con guantes limpios o manos lavadas.",
      source: `Spaulding 1968, objetos críticos; técnica aséptica: ${common}`,
    },
    sterileOnce: {
      words: "Un envase estéril se abre una sola vez.",
      source: "Spaulding 1968, objetos críticos",
    },
    sterileUnderTheSkin: {
      words: "Lo que atraviesa la piel llega estéril, de un envase abierto para este cliente.",
      source: spaulding,
    },
    cleanBeforeWet: {
      words: "Una superficie se limpia antes de desinfectarla, salvo que la etiqueta limpie en un solo paso.",
      source: "CDC 2008; OMS 2014, anexo G",
    },
    wetOnTheSurfaceItself: {
      words: "El desinfectante va sobre la superficie, no sobre la barrera que la cubre.",
      source: "CDC 2008: contacto con la superficie",
    },
    wetBeforeWipe: {
      words: "Una superficie sigue mojada todo el tiempo de contacto antes de secarla.",
      source: `CDC 2008; ${label}`,
    },
    wipedWithCleanGloves: {
      words: "Lo desinfectado se seca con guantes limpios.",
      source: gloveUse,
    },
    disinfectedBeforeCovered: {
      words: "Una superficie se desinfecta antes de cubrirla para el cliente.",
      source: `${neha}, 8.1-8.2`,
    },
    coveredOnlyClean: {
      words: "Las barreras van sobre lo limpio y seco, con las manos limpias.",
      source: common,
    },
    barrierWhereUncovered: {
      words: "Lo que se descubre tras el cliente se cubrió para el cliente.",
      source: `${neha}, 8.1`,
    },
    bottlesAway: {
      words: "Los frascos de los que se sirvió se retiran, limpios, antes de romper la piel.",
      source: common,
    },
    sharpsContainerOnly: {
      words: "Un punzante va al contenedor de punzantes y a ningún otro sitio.",
      source: `${bloodborne}(d)(4)(iii)(A)(1)`,
    },
    oldNeedleFirst: {
      words: "El punzante viejo se desecha antes de abrir otro.",
      source: asSoon,
    },
    needleInUse: {
      words: "El trabajo sigue solo con una aguja abierta para él.",
      source: "Spaulding 1968, objetos críticos: un solo uso",
    },
    woundCovered: {
      words: "El tatuaje se cubre antes de que el cliente deje la estación, y antes de cerrar la sesión.",
      source: common,
    },
    stopMeansStop: {
      words: "Si el cliente termina antes, no se tatúa más: sigue el apósito.",
      source: common,
    },
    sharpsSecured: {
      words: "Los punzantes están en el contenedor o apartados antes de que alguien se vaya.",
      source: common,
    },
    sharpsFirst: {
      words: "Al desmontar la estación, los punzantes van primero.",
      source: asSoon,
    },
    sharpsCounted: {
      words: "Cada punzante abierto está en el contenedor, y se cuenta, antes de cerrar la sesión.",
      source: common,
    },
    wasteStream: {
      words: "Lo que la sangre pudo alcanzar va a su propia bolsa; el contenedor de punzantes solo recibe punzantes.",
      source: `${bloodborne}(d)(4)(iii); basura doméstica: ${common}`,
    },
    bloodiedOut: {
      words: "Tras un accidente en el trabajo, lo desechable que tocó sangre se tira antes de seguir.",
      source: common,
    },
    bagLast: {
      words: "La bolsa de residuos se cierra con el último residuo dentro.",
      source: `${bloodborne}(d)(4)(iii)(B), cerrada antes de moverla, ${memory}; orden: ${common}`,
    },
    singleUseDiscarded: {
      words: "Lo de un solo uso se tira tras el cliente, usado o no, y nunca se guarda para otro.",
      source: `${common}; 25 TAC 229.409`,
    },
    thrownStaysOut: {
      words: "Lo que se tiró no se vuelve a usar.",
      source: `25 TAC 229.409: un solo uso; ${common}`,
    },
    reusableReady: {
      words: "Todo lo reutilizable que se ensució queda desinfectado, reprocesado o fuera de uso al final.",
      source: `${spaulding}; ${bloodborne}(d)(4)(ii)(A), ${memory}`,
    },
    criticalSterilised: {
      words: "Un objeto crítico usado se esteriliza o se tira; secarlo no lo hace seguro.",
      source: spaulding,
    },
    noBarrierLeft: {
      words: "Ninguna barrera se queda puesta para el próximo cliente.",
      source: `${neha}, 8.1`,
    },
    wipedAtTheEnd: {
      words: "Toda superficie mojada se seca o se enjuaga como dice su etiqueta antes de cerrar la sesión.",
      source: label,
    },
    outOfUseLeftAlone: {
      words: "Lo que se retiró del uso no se vuelve a usar.",
      source: common,
    },
    handsLast: {
      words: "Quitarse los guantes y lavarse las manos es lo último.",
      source: `${bloodborne}(d)(2)(v); OMS 2009`,
    },
  },
  rule: (words, source) => `Regla: ${words} Fuente: ${source}.`,
  reports: {
    freshGloves: "Pides guantes nuevos.",
    tornGlove: "Avisas de un guante roto.",
    tornBarrier: "Avisas de una barrera rota.",
    newNeedle: "Pides una aguja nueva.",
    parkNeedle: "Pides apartar la aguja.",
    moreInk: "Pides más tinta.",
    dropped: "Avisas de que algo se cayó.",
    touched: "Avisas de que tocaste algo.",
    photo: "Pides hacer una foto.",
    machineSwap: "Pides cambiar de máquina.",
    takeBreak: "Te tomas una pausa.",
    clientLeaves: "El cliente sale un momento.",
    clientReturns: "El cliente vuelve.",
    clientUnwell: "El cliente se siente mal.",
    stopEarly: "El cliente termina antes.",
    note: "Dejas una nota.",
  },
  step: (say, id) => `«${say}» (${id})`,
  does: (step) => `Haces ${step}.`,
  doesMany: (many, first, last) => `Haces ${many} pasos como se piden, de ${first} a ${last}.`,
  leavesOut: (step) => `Omites ${step}, y el protocolo lo permite.`,
  finishes: "Dices que el trabajo ha terminado.",
  hurt: "Avisas de un accidente y eliges seguir.",
  closes: "Cierras la sesión.",
  goesOn: (step) => `Haces ${step}, y el trabajo sigue.`,
  asks: (step) => `Ahora pide: ${step}.`,
  asksAbout: (step, things) => `Ahora pide: ${step}, y eso toca: ${things}.`,
  atClose: {
    handsLast: "Tus manos no están lavadas.",
    sharpsCounted: "Los punzantes no están todos contados.",
    reusableReady: "Algo reutilizable sigue sucio.",
    criticalSterilised: "Un objeto crítico sigue sucio.",
    singleUseDiscarded: "Algo de un solo uso sigue ahí.",
    noBarrierLeft: "Una barrera sigue puesta.",
    woundCovered: "El tatuaje no está cubierto.",
    wipedAtTheEnd: "Una superficie se mojó y no se secó.",
  },
  notAsItShouldBe: "Algo no está como debería.",
  hands: "las manos",
  sharps: "los punzantes",
  why: {
    tooMany: ({ rule, names, most }, told) =>
      `«${told.rule(rule)}» queda sin decidir: ${told.things(names)} tienen juntos más de ${most} estados.`,
    notFollowed: ({ rule }, told) => `«${told.rule(rule)}» queda sin decidir: el diagrama no sigue ese camino.`,
    leftOpen: ({ rule, names }, told) =>
      `«${told.rule(rule)}» queda sin decidir: no se puede mostrar en el diagrama real ni descartar siguiendo ${told.things(names)}.`,
    notHeldBack: ({ step, finding }) => `Lo que pide «${step}» podría no ser seguro y nada lo detendría (${finding}).`,
    onlyAPart: () => "Solo se recorrió una parte.",
    stopped: () => "La comprobación se detuvo.",
    notStarted: () => "La comprobación no pudo empezar. Vuelve a cargar la página.",
  },
};
