/**
 * Spanish. Short, imperative, the item first. Items have a gender and sentences must fit every one, so no adjective
 * agrees with {item}. Where a figure or a treatment is at stake it defers to the label, local rules or a clinician.
 */
import { wordings } from "../intent/wording";
import { durationWords, letterWords, numberWords, spellingWords } from "./esNumbers";
import type { Phrasebook } from "./phrasebook";

const { commands } = wordings.es;
const toConfirm = `Para confirmar: ${commands.confirm}.`;

export const es: Phrasebook = {
  language: "es",
  number: numberWords,
  duration: durationWords,
  listAnd: "y",
  months: [
    ...["enero", "febrero", "marzo", "abril", "mayo", "junio"],
    ...["julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"],
  ],
  dayOf: "{day} de {month} de dos mil {year}",
  letters: letterWords,
  spelling: spellingWords,

  refused: {
    notNow: {
      plain: "En este punto no. Termina primero este paso.",
      named: "{item}: en este punto no. Termina primero este paso.",
    },
    answerFirst: {
      plain: "Te hice una pregunta. Contéstala primero.",
      named: "{item}: te hice una pregunta. Contéstala primero.",
    },
    paused: {
      plain: `Estamos en pausa. Para continuar: ${commands.resume}.`,
      named: `{item}: estamos en pausa. Para continuar: ${commands.resume}.`,
    },
    handsNotWashed: {
      plain: "Las manos están sin lavar. Lávalas o frótalas primero.",
      named: "{item}: manos sin lavar. Lávalas o frótalas primero.",
    },
    glovesStillOn: {
      plain: "Aún llevas guantes. Quítatelos primero.",
      named: "{item}: aún llevas guantes. Quítatelos primero.",
    },
    wetClockRuns: {
      plain: "Hay una superficie que debe seguir mojada. Espera a que diga tiempo.",
      named: "{item}: debe seguir con humedad. Espera a que diga tiempo.",
    },
    outOfDate: {
      plain: "Eso está caducado. Usa otro en fecha.",
      named: "{item}: fuera de fecha. Usa otro en fecha.",
    },
    sharpsNotCounted: {
      plain: "Los cortopunzantes están sin contar. Cuenta primero los del contenedor.",
      named: "{item}: sin contar. Cuenta primero los del contenedor.",
    },
    sharpsNotSettled: {
      plain: "La cuenta de cortopunzantes no cuadra. Cuenta otra vez, o da un motivo.",
      named: "{item}: la cuenta no cuadra. Cuenta otra vez, o da un motivo.",
    },
    stepsLeft: {
      plain: "Quedan pasos. Haz cada uno, o sáltalo con un motivo.",
      named: "{item}: quedan pasos. Haz cada uno, o sáltalo con un motivo.",
    },
    notSkippable: {
      plain: "Este paso protege la salud y se queda. Hazlo para continuar.",
      named: "{item}: este paso protege la salud y se queda. Hazlo para continuar.",
    },
    nothingToUndo: {
      plain: "No hay nada que deshacer. Solo se deshace lo último que dijiste.",
      named: "{item}: nada que deshacer. Solo se deshace lo último que dijiste.",
    },
    noNeedleInUse: {
      plain: "No hay aguja en uso. Abre una primero.",
      named: "{item}: sin uso. Abre una primero.",
    },
    noEarlierStep: {
      plain: "Este es el primer paso. Sigue desde aquí.",
      named: "{item}: este es el primer paso. Sigue desde aquí.",
    },
    unknownItem: {
      plain: "No conozco ese objeto. Tiene que estar en el protocolo.",
      named: "{item}: no figura aquí. Tiene que estar en el protocolo.",
    },
    noSuchEvent: {
      plain: "Este protocolo no tiene pasos para eso. Deja una nota.",
      named: "{item}: este protocolo no tiene pasos para eso. Deja una nota.",
    },
    cleanFirst: {
      plain: "Algo sigue contaminado. Límpialo y desinféctalo primero.",
      named: "{item}: sigue con contaminación. Limpia y desinfecta primero.",
    },
    glovesSoiled: {
      plain: "Tus guantes están contaminados. Cámbialos primero.",
      named: "{item}: tus guantes están contaminados. Cámbialos primero.",
    },
    glovesFirst: {
      plain: "Es estéril. Ponte primero guantes nuevos.",
      named: "{item}: estéril. Ponte primero guantes nuevos.",
    },
    itemSoiled: {
      plain: "Eso está contaminado. Déjalo hasta que se limpie.",
      named: "{item}: con contaminación. Déjalo hasta que se limpie.",
    },
    outOfUse: {
      plain: "Eso está fuera de uso. No lo toques.",
      named: "{item}: fuera de uso. No tocar.",
    },
    skinFirst: {
      plain: "La piel aún no lleva antiséptico. Eso va primero.",
      named: "{item}: aún sin antiséptico. Eso va primero.",
    },
    codeUnreadable: {
      plain: "No puedo leer ese código. Muestra el del envase, o escribe el lote.",
      named: "{item}: no puedo leer ese código. Muestra el del envase, o escribe el lote.",
    },
    codeWithoutLot: {
      plain: "Ese código no dice el lote. Muestra el otro, o escríbelo.",
      named: "{item}: ese código no dice el lote. Muestra el otro, o escríbelo.",
    },
    codeUnsure: {
      plain: "Ese código puede estar mal impreso. Lee el envase y escribe el lote.",
      named: "{item}: ese código puede estar mal impreso. Lee el envase y escribe el lote.",
    },
  },

  deviated: {
    touchedWithSoiledGloves: {
      plain: "Contacto con guantes contaminados. Cuenta como contaminado.",
      named: "{item}: contacto con guantes contaminados. Cuenta como contaminado.",
    },
    touchedWithUnwashedHands: {
      plain: "Contacto con manos sin lavar. Cuenta como contaminado.",
      named: "{item}: contacto con manos sin lavar. Cuenta como contaminado.",
    },
    glovesOverUnwashedHands: {
      plain: "Guantes sobre manos sin lavar. Quítatelos, lávate, guantes nuevos.",
      named: "{item}: guantes sobre manos sin lavar. Quítatelos, lávate, guantes nuevos.",
    },
    glovesOverGloves: {
      plain: "Guantes sobre guantes. Quítatelos todos, lávate, guantes nuevos.",
      named: "{item}: guantes sobre guantes. Quítatelos todos, lávate, guantes nuevos.",
    },
    washedInGloves: {
      plain: "Lavar los guantes no cuenta. Quítatelos y lávate.",
      named: "{item}: lavar los guantes no cuenta. Quítatelos y lávate.",
    },
    appliedBeforeCleaning: {
      plain: "No se limpió antes. Limpia y vuelve a mojar.",
      named: "{item}: no se limpió antes. Limpia y vuelve a mojar.",
    },
    coveredUnclean: {
      plain: "Se cubrió sin limpiar. Descubre, limpia y desinfecta, y cubre de nuevo.",
      named: "{item}: se cubrió sin limpiar. Descubre, limpia y desinfecta, y cubre de nuevo.",
    },
    openedWithSoiledGloves: {
      plain: "Se abrió con guantes contaminados. No es estéril: tíralo y abre otro.",
      named: "{item}: se abrió con guantes contaminados. No es estéril: a desechar, y abre otro paquete.",
    },
    openedWithUnwashedHands: {
      plain: "Se abrió con manos sin lavar. No es estéril: tíralo y abre otro.",
      named: "{item}: se abrió con manos sin lavar. No es estéril: a desechar, y abre otro paquete.",
    },
    openedAgain: {
      plain: "Ese paquete ya estaba abierto. No es estéril: tíralo y abre otro.",
      named: "{item}: el paquete ya estaba abierto. No es estéril: a desechar, y abre otro.",
    },
    usedTaggedOut: {
      plain: "Paso hecho, aunque eso está fuera de uso. Cuenta como usado.",
      named: "{item}: fuera de uso, pero el paso se hizo. Cuenta como usado.",
    },
    openedOutOfDate: {
      plain: "Se abrió fuera de fecha. Tíralo y abre otro en fecha.",
      named: "{item}: se abrió fuera de fecha. A desechar, y abre otro paquete en fecha.",
    },
    appliedOutOfDate: {
      plain: "Ese producto está caducado. No cuenta: moja con uno en fecha.",
      named: "{item}: producto caducado. No cuenta: moja con uno en fecha.",
    },
    sharpNotInSharps: {
      plain: "Hay un cortopunzante fuera de su contenedor. Asegúralo con una herramienta, no con los dedos.",
      named: "{item}: fuera del contenedor de cortopunzantes. Asegura con una herramienta, no con los dedos.",
    },
    wipedEarly: {
      plain: "Secado antes de tiempo. Vuelve a mojar.",
      named: "{item}: secado antes de tiempo. Vuelve a mojar.",
    },
    wipedWithSoiledGloves: {
      plain: "Secado con guantes contaminados. Guantes nuevos, y desinfecta otra vez.",
      named: "{item}: secado con guantes contaminados. Guantes nuevos, y desinfecta otra vez.",
    },
    neverWet: {
      plain: "No se mojó. Moja durante todo el tiempo de la etiqueta.",
      named: "{item}: no se mojó. Moja durante todo el tiempo de la etiqueta.",
    },
    skinBrokenWithoutGloves: {
      plain: "Sin guantes limpios. Para, lávate, guantes nuevos.",
      named: "{item}: sin guantes limpios. Para, lávate, guantes nuevos.",
    },
    skinNotPrepared: {
      plain: "La piel no llevaba antiséptico. Para y desinféctala antes de seguir.",
      named: "{item}: sin antiséptico. Para y desinfecta antes de seguir.",
    },
    usedUnsterile: {
      plain: "Eso no es estéril. Para, y toma uno estéril.",
      named: "{item}: no es estéril. Para, y toma uno estéril.",
    },
    broughtBackSoiled: {
      plain: "Volvió con contaminación. Limpia y desinfecta primero.",
      named: "{item}: volvió con contaminación. Limpia y desinfecta primero.",
    },
    stepLeftOut: { plain: "Saltado.", named: "{item}: paso saltado." },
    problemReported: { plain: "Problema anotado.", named: "{item}: problema anotado." },
    dropped: {
      plain: "Se cayó. Cuenta como contaminado.",
      named: "{item}: al suelo. Cuenta como contaminado.",
    },
    touchedUnplanned: {
      plain: "Tocado. Cuenta como contaminado.",
      named: "{item}: hubo contacto. Cuenta como contaminado.",
    },
    barrierTorn: {
      plain: "Barrera rota. Lo que cubre cuenta como contaminado.",
      named: "{item}: barrera rota. Cuenta como contaminado.",
    },
    gloveTorn: {
      plain: "Guante roto. Fuera los dos, lávate, guantes nuevos.",
      named: "{item}: guante roto. Fuera los dos, lávate, guantes nuevos.",
    },
    sharpsMismatch: {
      plain: "La cuenta de cortopunzantes no cuadra. Busca antes de seguir.",
      named: "{item}: la cuenta no cuadra. Busca antes de seguir.",
    },
  },

  phase: {
    setUp: "Preparación.",
    procedure: "Procedimiento. Dime lo que pase.",
    dressing: "Apósito.",
    breakdown: "Recogida. Primero los cortopunzantes.",
    closed: "Sesión cerrada.",
  },
  closed: {
    balanced: "Los cortopunzantes cuadran.",
    discrepancy: "Los cortopunzantes no cuadran. Figura lo primero en el registro.",
    unready: "Sin preparar para el próximo cliente: {items}.",
  },
  clock: {
    reapplyDue: "{items}: aplica más ahora.",
    lapsed: "{items}: demasiado tiempo sin aplicar más. Vuelve a mojar, el tiempo empieza de cero.",
    timeUp: "{items}: tiempo. ¿Siguió todo mojado?",
    stillWet: "Dejé de ver un rato. {items}: ¿sigue todo mojado?",
    dried: "{items}: vuelve a mojar, el tiempo empieza de cero.",
    ready: "{items}: listo.",
  },
  ready: {
    first: "Todo listo en {duration}.",
    later: "Más tarde de lo previsto: todo listo en {duration}.",
    sooner: "Antes de lo previsto: todo listo en {duration}.",
  },
  wipedEarly: {
    plain: "{duration} de menos, vuelve a mojar.",
    named: "{item}: {duration} de menos, vuelve a mojar.",
  },

  ask: {
    firstItem: "¿Cuál? ¿{item}?",
    nextItem: "¿{item}?",
    noItem: "Ninguno de esos. Anotado sin nombre.",
    skipReason: `¿Por qué? ${commands.reasonNotForClient}, ${commands.reasonNoStock}, o ${commands.reasonOwnDecision}.`,
    outOfUse: "¿Retirar algo del uso?",
    sharps: {
      none: "Ningún cortopunzante abierto. ¿Es correcto?",
      one: "Uno abierto. ¿Hay uno en el contenedor?",
      many: "Abiertos: {opened}. ¿Hay {expected} en el contenedor?",
      recount: "Cuenta otra vez, solo con la vista. Deben ser {expected}. ¿Lo son?",
    },
    discrepancy: {
      first: "La cuenta sigue sin cuadrar.",
      reason: {
        lost: "¿Se perdió uno?",
        miscounted: "¿Se contaron mal?",
        exposure: "¿Hubo un accidente?",
        unexplained: "¿Sin explicación?",
      },
    },
    closing: {
      balanced: "¿Cerrar y sellar? Cortopunzantes abiertos: {opened}, todos localizados.",
      discrepancy: "¿Cerrar y sellar? Los cortopunzantes no cuadran.",
      deviations: { one: "Una desviación.", many: "Desviaciones: {count}." },
      leftOut: { one: "Un paso saltado.", many: "Pasos saltados: {count}." },
      confirm: toConfirm,
    },
    exposure: {
      // The same advice as in English: CDC/NIOSH, emergency needlestick information (from memory).
      firstAid:
        "Para. Deja el cortopunzante en lugar seguro. Lava la herida con agua corriente y jabón. Ojos o boca: enjuaga con mucha agua limpia. Después llama enseguida a un profesional sanitario.",
      choice: `¿Terminar la sesión? ${commands.yes} la termina. ${commands.no} la continúa, con pasos de seguridad.`,
      confirmEnd: `La sesión termina aquí. ${toConfirm}`,
    },
    lot: {
      read: "{item}: lote {lot}.",
      goodUntil: "Vale hasta el {date}.",
      noExpiry: "Sin fecha.",
      isRight: toConfirm,
    },
    undo: {
      question: `¿Deshacer {what}? ${toConfirm}`,
      what: {
        stepDone: "el último paso",
        stepSkipped: "el paso saltado",
        applied: "el mojado",
        wiped: "el secado",
        ready: "el sí a la humedad",
        event: "el último suceso",
        lot: "el lote",
        count: "la cuenta de cortopunzantes",
        lastReport: "lo último que dijiste",
      },
    },
    whichPhrase: "¿Dijiste: {phrase}?",
    phrase: commands,
  },

  answer: {
    noClock: "Ningún reloj corre.",
    remaining: "{item}: {duration}.",
    waiting: "{item}: se cumplió el tiempo. ¿Siguió todo mojado?",
    stepsLeft: { none: "No quedan pasos.", one: "Queda un paso.", many: "Pasos que quedan: {count}." },
    notReady: { all: "Sin preparar aún: {items}.", more: "Sin preparar aún: {items}, y {count} más." },
    outOfUse: "Fuera de uso: {items}.",
    sharpsOut: { one: "Hay un cortopunzante fuera.", many: "Cortopunzantes fuera: {count}." },
    working: "Procedimiento. Dime lo que pase, o que el tatuaje está acabado.",
    toClose: `Todos los pasos están hechos. Para cerrar: ${commands.close}.`,
    options: { all: "Puedes decir: {phrases}.", more: "Puedes decir: {phrases}. La pantalla muestra el resto." },
    holdUp: "Muestra el código a la cámara.",
  },

  mayTouch: {
    no: "No.",
    yes: {
      clean: "Sí. {item}: sin contaminación, y tus manos también.",
      covered: "Sí. {item}: con barrera. Solo se toca la barrera.",
      bothSoiled: "Sí. {item}: con contaminación ya. Después no toques nada limpio.",
    },
  },

  event: {
    freshGloves: "Guantes nuevos.",
    tornGlove: "Guante roto.",
    tornBarrier: "Barrera rota.",
    newNeedle: "Aguja nueva.",
    parkNeedle: "Aguja apartada.",
    moreInk: "Más tinta.",
    dropped: "Algo se cayó.",
    touched: "Contacto anotado.",
    photo: "Foto.",
    machineSwap: "Otra máquina.",
    takeBreak: "Descanso.",
    clientLeaves: "El cliente sale.",
    clientReturns: "El cliente vuelve.",
    clientUnwell: "Para ya.",
    stopEarly: "Terminamos antes.",
    note: "Una nota.",
  },
  kept: {
    paused: "En pausa.",
    resumed: "Seguimos.",
    undone: "Deshecho.",
    leftOut: "Saltado.",
    lot: "Lote guardado.",
    note: "Nota guardada.",
    count: "Cuenta guardada.",
    wiped: "Secado.",
    briskOn: "Rápido.",
    briskOff: "Con cuidado.",
    problem: "Problema anotado.",
  },
  eventItem: "{item}, anotado.",
  note: {
    recording: "Grabando.",
    nothing: "No oí nada. No hay nota.",
    enough: "Este registro no admite más notas. Escríbela.",
  },

  begun: "Sesión empezada. La etiqueta del producto y las normas locales están por encima de mí.",
  reopened: "Abierta de nuevo, donde estábamos.",
  carriedOver: "Quedó sin preparar la última vez: {items}. Empezamos por ahí.",
  exposure: {
    ended: "Sesión terminada. Llama ya a un profesional sanitario, si no lo has hecho.",
    resuming: "Para continuar hacen falta todos los pasos de seguridad.",
    resumed: "Seguimos. Acude hoy a un profesional sanitario.",
  },
  notKept: {
    storageFull: "No guardado. El almacenamiento está lleno. Haz sitio y dilo otra vez.",
    writeFailed: "No guardado. Falló la escritura. Dilo otra vez, o apúntalo en papel.",
  },
  ear: {
    trouble: {
      none: "No encuentro micrófono. Usa el pedal o la pantalla.",
      denied: "No puedo usar el micrófono. Usa el pedal o la pantalla.",
      lost: "No te oigo. Usa el pedal o la pantalla.",
    },
    back: "Te oigo otra vez.",
    check: {
      machine: "Enciende tu máquina y no digas nada.",
      phrases: "Ahora di lo que muestra la pantalla.",
      good: "Te oigo bien.",
      fair: "Te oigo, pero no siempre. La pantalla dice qué ayuda.",
      poor: "No te oigo lo bastante bien. La pantalla dice qué ayuda.",
    },
    teach: {
      begin: "Pido cada frase tres veces. Dila como la dices al trabajar.",
      ask: "Di: {address} {phrase}.",
      addresses: wordings.es.addresses,
      clipped: "Demasiado fuerte. Otra vez.",
      tooQuiet: "Demasiado bajo. Otra vez.",
      cutOff: "Se cortó. Otra vez.",
      other: "Sonó distinto. Otra vez.",
      nothing: "No oí nada. Otra vez.",
      learning: "Gracias. Estoy aprendiendo.",
      better: "Ahora conozco tu voz.",
      noBetter: "No ayudó. No se cambió nada.",
    },
  },
  handCount: {
    begun: "Cuento hasta {seconds}, desde ahora.",
    enough: "{seconds}. Es suficiente.",
    startAgain: "Perdí la cuenta. Empieza de nuevo.",
    short: "{seconds} segundos de menos.",
  },
  volume: { louder: "Más alto.", quieter: "Más bajo.", loudest: "Es lo más alto.", quietest: "Es lo más bajo." },
  caution: {
    label: "Decide la etiqueta del producto.",
    localRules: "Deciden tus normas locales.",
    clinician: "Pregunta a un profesional sanitario.",
    emergency: "Ante la duda, llama a emergencias.",
  },
  tour: {
    welcome:
      "Soy la segunda persona en la sala. Leo cada paso en voz alta y tú contestas. De principio a fin no hay nada que tocar.",
    done: "Háblame con mi nombre y una frase. La charla no me llega. Cuando un paso esté hecho, dímelo.",
    whatNow: "¿Perdiste el hilo? Pregúntame cuando quieras.",
    wet: "Cuando una superficie esté toda mojada, dímelo. Llevo su tiempo, y el de todas las que quieras.",
    timeUp:
      "Cuando se cumple el tiempo de la etiqueta, pregunto si siguió todo mojado. Solo tu sí la da por lista. Ante la duda empiezo de nuevo: tarde, nunca antes de tiempo.",
    undo: "¿Dijiste algo mal? Retíralo.",
    refuse:
      "Si algo no es seguro ahora, digo que no, por qué, y qué lo arreglaría. Lo que pasó siempre queda guardado.",
    accident:
      "Tras un pinchazo, un corte o una salpicadura, primero los primeros auxilios. El botón rojo y la tecla efe nueve también me avisan. Pruébalo: aquí no hace nada.",
    quiet:
      "Mientras trabajas callo, salvo que callar sea menos seguro. Eso es todo. Ahora mira una sesión, o empieza la tuya.",
  },
  soundCheck: "Así sueno. ¿Se oye por encima de la máquina?",
};
