/** The steriliser in Spanish. */
import type { SumPhrases } from ".";

const measures = { time: "tiempo", temperature: "temperatura", pressure: "presión" } as const;

export const steriliserEs: SumPhrases["steriliser"] = {
  verdicts: {
    held: (band, minutes) => `Mantuvo ${band}: ${minutes} min sin cortes`,
    "not-held": (band, minutes) => `NO mantuvo: hace falta ${band}; lo más largo sin cortes fue ${minutes} min`,
    "held-in-air": (_, minutes) => `NO aceptado: ${minutes} min en la banda, pero la presión muestra aire en la cámara`,
    "held-in-superheat": (_, minutes) =>
      `NO aceptado: ${minutes} min en la banda, pero la presión muestra vapor sobrecalentado`,
  },
  loads: {
    "naked-solid": "macizo sin envolver",
    "wrapped-solid": "macizo envuelto",
    "naked-hollow": "hueco sin envolver",
    "wrapped-hollow": "hueco envuelto",
    porous: "poroso",
  },
  because: {
    "never tested": "nunca probado",
    interval: "plazo",
    installation: "instalación",
    "major repair": "reparación grande",
  },
  beside: (minutes, method, reference, z) => `F0 ${minutes} min (${method}, ${reference} °C, z ${z} K)`,
  airUnchecked: "Sin presión registrada: no se comprobó el aire.",
  byHand: "Leído a mano.",
  notAccepted: (why, verdict) => `NO aceptado: ${why} ${verdict}`,
  band: (range, minutes) => `${range} durante ${minutes} min`,
  orAbove: (low) => `${low} °C o más`,
  nothingLoaded: "No se ha dicho qué lleva la carga.",
  notInClass: (kind, cycleClass, why) => `${kind} no puede ir en un ciclo de clase ${cycleClass}: ${why}.`,
  makerSilent: "el fabricante no lo declara",
  nakedSolidOnly: "esa clase es solo para instrumentos macizos sin envolver",
  chooseBand: "Elige la banda que el ciclo debe mantener.",
  mixedUp: "La lectura más fría es más caliente que la más caliente.",
  numberNeeded: (name, low, high) => `${name}: hace falta un número de ${low} a ${high}.`,
  biologicalTest: "prueba biológica",
  weeklyHere: "prueba biológica (semanal, CDC 2008: este lugar no da ninguna)",
  bowieDickTest: "prueba de Bowie-Dick",
  file: {
    tooLarge: "El archivo pasa de 5 MB; un ciclo son unos cientos de líneas.",
    notCsv: "El archivo no es CSV: hay unas comillas sin cerrar.",
    empty: "El archivo no trae lecturas: hacen falta una fila de títulos y una fila por lectura.",
    tooMany: "El archivo trae más de 100 000 lecturas.",
    pressureKind: (column) => `${column} debe decir su unidad y abs o gauge, como pressure_bar_gauge.`,
    second: (column, of) => `${column} es una segunda columna de ${measures[of]}.`,
    timeNeeded: "Hace falta una columna time_s, time_min o time_ms.",
    temperatureNeeded: "Hace falta una columna temperature_c o temperature_f.",
    badValue: (line, cell, of) => `Línea ${line}: ${cell} no es ${measures[of]} que dé un esterilizador de vapor.`,
    timeBack: (line) => `Línea ${line}: el tiempo no avanza.`,
  },
  pack: {
    goodThrough: (day) => `Vale hasta el ${day}, salvo mojado, roto o abierto`,
    untilEvent: "Estéril hasta que se moje, se rompa o se abra",
    ids: (pack, cycle) => `Paquete ${pack}, ciclo ${cycle}`,
    spoken: (contents, packed, good) => `${contents}, envuelto el ${packed}. ${good}.`,
  },
};
