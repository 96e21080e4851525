/** The words of the screens about hands, due dates and places in Spanish. */
import type { RecordKind } from "../../../due/retention";
import type { HandMethod } from "../../../hands/durations";
import type { HandWords } from "../../../hands/timer";
import type { SumWords } from "./index";

const methods: Record<HandMethod, string> = { wash: "Lavar", rub: "Frotar" };
const done: Record<HandMethod, string> = {
  wash: "Lavadas. Sécalas con una toalla nueva.",
  rub: "Hecho. Deja que se sequen.",
};
const startAgain = "Perdí la cuenta. Empieza de nuevo.";

export const handsEs: SumWords["hands"] = {
  ready: "Preparado",
  seconds: (left: number) => `${left} s`,
  start: { wash: "Lavar, 40 segundos", rub: "Frotar, 30 segundos" },
  stop: "Parar",
  goOn: { wash: "Lava.", rub: "Frota hasta que sea la hora, siempre mojadas." },
  methods,
  spoken: { done, startAgain, secondsShort: "segundos de menos" },
  shown: (words: HandWords): string => {
    switch (words.code) {
      case "count":
        return `${words.seconds} segundos`;
      case "done":
        return done[words.method];
      case "start-again":
        return startAgain;
      case "short":
        return `Parado ${words.shortS} segundos antes. No cuenta.`;
    }
  },
  which: "Cuánto tiempo, y quién lo dice",
  whichHint:
    "Las fuentes difieren. Cuarenta segundos de lavado las cumplen todas. Las manos visiblemente sucias se lavan, no se frotan.",
  published: (method: string, leastS: number, mostS: number | null) =>
    mostS === null ? `${method}, ${leastS} s o más` : `${method}, de ${leastS} a ${mostS} s`,
};

const recordKinds: Record<RecordKind, string> = {
  "client-record": "Registro del cliente",
  "health-questionnaire": "Cuestionario de salud",
  "steriliser-log": "Diario del esterilizador",
  "biological-test-log": "Diario de pruebas biológicas",
  "pre-sterilised-purchase": "Recibo de material preesterilizado",
  "training-record": "Registro de formación",
  "staff-medical-record": "Registro médico del personal",
  "sharps-injury-log": "Diario de heridas con cortopunzantes",
  "hazardous-waste-note": "Documento de residuos peligrosos",
  "waste-transfer-note": "Documento de entrega de residuos",
};

export const dueEs: SumWords["due"] = {
  byPlace: (place: string, isChosen: boolean) =>
    isChosen ? `Según las normas de ${place}.` : "Aún no hay lugar elegido. Elígelo en la página Lugar.",
  exposure: "Tras un pinchazo, corte o salpicadura",
  exposureHint:
    "Ahora, primeros auxilios y un profesional sanitario. Estas horas solo dicen cuándo es tarde. No es consejo médico.",
  exposedAt: "Cuándo ocurrió",
  exposedHint: (zone: string) => `Con el reloj de aquí (${zone}).`,
  notYet: "Eso aún no ha ocurrido. Comprueba la fecha y la hora.",
  standings: { "not yet open": "más tarde", open: "a tiempo", passed: "pasado" },
  risk: "Cifras publicadas del riesgo",
  riskNote: "No coinciden, así que están todas, cada una con su fuente.",
  age: "¿Edad suficiente?",
  born: "Fecha de nacimiento",
  bornHint: "Del documento que tienes en la mano. No se guarda.",
  retention: "Hasta cuándo se conservan los registros",
  kind: "Registro",
  kinds: recordKinds,
  startsOn: "Su fecha",
  startsOnHint: "Desde cuándo cuenta la norma: del registro, del uso o de la baja.",
  asked: "Este",
  session: (client: string) => `Cliente ${client}`,
  cycle: (id: string) => `Ciclo ${id}`,
  keepUntil: (kind: string, until: string) => `${kind}, conservar hasta ${until}`,
  onDevice: "En este dispositivo",
  noneOnDevice: "Aún ninguno.",
  nothingDeleted: "Desde aquí no se borra nada.",
  print: "Imprimir la lista de plazos",
  sheet: {
    made: (day: string) => `Hecha el ${day}, solo con lo de este dispositivo.`,
    columns: { record: "Registro", kind: "Tipo", state: "Ahora", until: "Hasta", done: "Qué se hizo, cuándo, quién" },
  },
};

export const placeEs: SumWords["place"] = {
  which: "Dónde trabajas",
  whichHint: "De ello dependen la edad mínima, las fechas de pruebas y los plazos.",
  place: "Lugar",
  notChosen: "sin elegir: valores prudentes",
  chosen: (name: string) => `lugar ${name}`,
  unsure: (marked: number, all: number) =>
    `${marked} de ${all} líneas no están confirmadas. Compruébalas antes de confiar en ellas.`,
  lines: "Línea por línea",
  linesHint: "Cada una con su fuente y su año. Cualquiera se puede cambiar.",
  marks: { "from memory": "de memoria", "not confirmed": "sin confirmar", "studio's own": "nuestra" },
  supplied: (says: string) => `Como venía: ${says}`,
  nothing: "nada",
  change: "Cambiar",
  changeOf: (says: string) => `Cambiar: ${says}`,
  back: "Como venía",
  backOf: (says: string) => `Como venía, en vez de: ${says}`,
  own: "nuestra propia línea",
  fields: {
    ...{ age: "", keep: "", "biological-test": "", "sharps-fill": "" },
    ...{
      report: "Qué se notifica",
      waste: "Residuo",
      "pack-label": "Cada paquete lleva (date: fecha, initials: iniciales, indicator: indicador)",
    },
    words: "Lo que dice",
  },
  numbers: {
    ...{ waste: "", "pack-label": "", words: "" },
    ...{ age: "Edad mínima, años", keep: "Conservar durante", "biological-test": "Al menos cada" },
    ...{ report: "En cuántos días laborables", "sharps-fill": "Cerrar cuando esté lleno al, por ciento" },
  },
  unit: "Unidad",
  units: { days: "días", weeks: "semanas", months: "meses", years: "años" },
  colour: "Color del recipiente",
  code: "Código del residuo",
  route: "Adónde va",
  reason: "Por qué, o según quién",
  reasonHint: "Como el párrafo de tus propias normas.",
  keepOwn: "Guardar la nuestra",
  cancel: "Dejarlo",
  troubles: {
    notANumber: "Hace falta un número entero razonable.",
    missing: "Aún falta algo por rellenar.",
    reason: "Di por qué, o según qué norma.",
  },
};
