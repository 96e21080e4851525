/**
 * The phrases in each language. Ids are the same everywhere, so a record reads in any language; a station's address word
 * is known by its English form and said in the language of its artist. Chosen like the English ones: see
 * audio/make/PHRASES.md. Each language has a phrase model of its own.
 */
import { type AddressWord, addressWords, type CommandId, commands } from "./phrases";

export const phraseLanguages = ["en", "es"] as const;
export type PhraseLanguage = (typeof phraseLanguages)[number];

export interface Wording {
  readonly addresses: Readonly<Record<AddressWord, string>>;
  readonly commands: Readonly<Record<CommandId, string>>;
}

const english: Wording = {
  addresses: Object.fromEntries(addressWords.map((word) => [word, word])) as Record<AddressWord, string>,
  commands,
};

const spanish: Wording = {
  addresses: { station: "estación", workbench: "ayudante", companion: "compañera" },
  commands: {
    // Walking the list
    done: "completado",
    again: "repite la frase",
    back: "paso anterior",
    skip: "saltamos este punto",
    problem: "hay un problema",
    pause: "ponlo en pausa",
    resume: "seguimos adelante",
    howLong: "cuántos minutos",
    whatNow: "dónde estamos ahora",
    whatLeft: "qué queda pendiente",
    // Answers
    yes: "afirmativo",
    no: "de ninguna manera",
    confirm: "doy fe de ello",
    undo: "deshaz el error",
    // Why a step is left out
    reasonNotForClient: "no corresponde aquí",
    reasonNoStock: "se agotó el material",
    reasonOwnDecision: "es decisión propia",
    // Wet surfaces
    applied: "ya está rociado",
    wiped: "secado con papel",
    // What happens during the work
    freshGloves: "guantes nuevos puestos",
    tornGlove: "dedo al descubierto",
    tornBarrier: "barrera rasgada",
    newNeedle: "cambio de aguja",
    parkNeedle: "guárdala para luego",
    moreInk: "más pigmento",
    dropped: "se cayó al suelo",
    touched: "toqué algo indebido",
    photo: "hago una foto",
    machineSwap: "máquina distinta",
    takeBreak: "hora del descanso",
    clientLeaves: "cliente sale fuera",
    clientReturns: "bienvenido de vuelta",
    clientUnwell: "mareos y malestar",
    stopEarly: "terminamos por hoy",
    note: "apunta un recado",
    finish: "tatuaje acabado",
    close: "sella el registro",
    accident: "alarma de accidente",
    // The voice itself
    louder: "sube el volumen",
    quieter: "habla más bajito",
    // Asked at any time
    mayITouch: "puedo manipularlo",
    scan: "escanea el paquete",
    hush: "silencio por favor",
    options: "lista de opciones",
  },
};

export const wordings: Readonly<Record<PhraseLanguage, Wording>> = { en: english, es: spanish };
