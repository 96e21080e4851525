/** Due times, ages and how long records are kept, in Spanish. */
import type { SumPhrases } from ".";

const units = {
  hours: ["hora", "horas"],
  days: ["día", "días"],
  weeks: ["semana", "semanas"],
  months: ["mes", "meses"],
  years: ["año", "años"],
} as const;

export const dueEs: SumPhrases["due"] = {
  undated: "sin fecha",
  fromMemory: "de memoria",
  routes: { percutaneous: "a través de la piel", "mucous membrane": "mucosa" },
  ifNotProtected: (percent) => `${percent}, sin protección`,
  span: (count, unit) => `${count} ${units[unit][count === 1 ? 0 : 1]}`,
  records: {
    "client-record": "ficha del cliente",
    "health-questionnaire": "cuestionario de salud",
    "steriliser-log": "registro del esterilizador",
    "biological-test-log": "registro de pruebas biológicas",
    "pre-sterilised-purchase": "compra de material esterilizado",
    "training-record": "registro de formación",
    "staff-medical-record": "historia médica del personal",
    "sharps-injury-log": "registro de pinchazos y cortes",
    "hazardous-waste-note": "nota de residuos peligrosos",
    "waste-transfer-note": "nota de entrega de residuos",
  },
  startsFrom: {
    "record date": "la fecha del registro",
    "end of employment": "el fin del empleo",
    use: "el uso",
    "end of the year": "el fin del año",
  },
  keeps: {
    keep: "guardar",
    "may be deleted": "se puede borrar",
    "keep: no rule known": "guardar: no se conoce regla",
  },
  notKnownHere: "aquí no se sabe",
  badDate: (typed) => `${typed} no es una fecha como 2026-11-25.`,
  badTime: (typed) => `${typed} no es una hora como 2026-11-25T07:40 o 2026-11-25T06:40:00Z.`,
  bornLater: (born) => `La fecha de nacimiento ${born} aún no ha llegado.`,
  ageUnlikely: (born, years) => `La fecha de nacimiento ${born} da ${years} años; revísala.`,
  ageNotKnown: (place) => `${place} no da aquí una edad mínima; complétala primero.`,
  oldEnough: (years, on, least) => `${years} años el ${on}: tiene la edad (${least}).`,
  tooYoung: (years, on, least, until) => `${years} años el ${on}: no tiene la edad (${least}) hasta el ${until}.`,
};
