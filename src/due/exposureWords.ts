/** What is said of an exposure, in the languages that are spoken; the sources stay as they are called. */
import type { SpokenLanguage } from "../announcements/phrasebooks";
import type { agreedFirstAid, ExposureRule, ExposureRuleId, FirstAidId } from "./exposureRules";

export interface ExposureWords {
  readonly what: (rule: ExposureRule) => string;
  readonly firstAid: (line: (typeof agreedFirstAid)[number]) => string;
  /** Between the opening of a window and its end. */
  readonly to: string;
  readonly undated: string;
  readonly fromMemory: string;
}

export const exposureEn: ExposureWords = {
  what: ({ what }) => what,
  firstAid: ({ words }) => words,
  to: "to",
  undated: "undated",
  fromMemory: "from memory",
};

const whatEs: Readonly<Record<ExposureRuleId, string>> = {
  clinician: "salud laboral o urgencias",
  "hiv-pep-ideal": "primera dosis de la medicación posexposición al VIH, lo ideal",
  "hiv-pep-latest": "primera dosis de la medicación posexposición al VIH, como muy tarde",
  "hiv-pep-course": "fin de una pauta de 28 días, si empezó enseguida",
  "hiv-first": "prueba del VIH",
  "hiv-final": "prueba del VIH, la última",
  "hbv-globulin": "globulina y vacuna de la hepatitis B si no hay protección, de preferencia",
  "hbv-globulin-limit": "después no se conoce el efecto de la globulina de la hepatitis B",
  "hbv-final": "pruebas de la hepatitis B, las últimas",
  "hcv-baseline": "primera prueba de la hepatitis C, de preferencia",
  "hcv-nat": "prueba del ARN de la hepatitis C",
  "hcv-final": "prueba de anticuerpos de la hepatitis C, la última",
};

const firstAidEs: Readonly<Record<FirstAidId, string>> = {
  wash: "Pinchazo o corte: lava con agua y jabón.",
  never: "No lo frotes, no lo chupes, nada de lejía en la herida.",
  flush: "Ojo, nariz o boca: enjuaga con mucha agua.",
  clinician: "Ve a un médico ahora. No esperes al resultado de una prueba.",
};

export const exposureEs: ExposureWords = {
  what: ({ id }) => whatEs[id],
  firstAid: ({ id }) => firstAidEs[id],
  to: "a",
  undated: "sin fecha",
  fromMemory: "de memoria",
};

const languages: Readonly<Record<SpokenLanguage, ExposureWords>> = { en: exposureEn, es: exposureEs };
export const exposureWords = (language: SpokenLanguage): ExposureWords => languages[language];
