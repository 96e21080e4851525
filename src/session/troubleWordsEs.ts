/** Why a file is no protocol, in Spanish. */
import type { TroubleWords } from "./troubleWords";

const measures = {
  text: ["Este texto es demasiado corto", "Este texto es demasiado largo"],
  list: ["Esta lista es demasiado corta", "Esta lista es demasiado larga"],
  number: ["Este número es demasiado pequeño", "Este número es demasiado grande"],
} as const;

export const troubleEs: TroubleWords = {
  kinds: {
    string: "un texto entre comillas",
    number: "un número",
    int: "un número entero",
    boolean: "true o false",
    array: "una lista entre corchetes",
    object: "un objeto entre llaves",
    record: "un objeto entre llaves",
  },
  found: { nothing: "nada (null)", list: "una lista", object: "un objeto" },
  tooLarge: (most) => `El archivo pasa de ${most} caracteres. Un protocolo de 400 pasos tiene la décima parte.`,
  notJson: "El archivo no es JSON. Exporta otra vez el protocolo y elige ese archivo.",
  tooDeep: "El archivo está anidado demasiado hondo para ser un protocolo. Exporta otra vez el protocolo.",
  missing: (belongs) => `Falta este campo.${belongs ? ` Es ${belongs}.` : ""} Añádelo.`,
  wrongKind: (is, belongs) => `Aquí está ${is}, donde va ${belongs}. Corrígelo.`,
  unknownField: (key, isOrder) =>
    `Un protocolo no tiene aquí el campo ${key}. Quítalo.${isOrder ? " Los pasos se hacen en el orden de su lista." : ""}`,
  onlyThese: (is, values) => `Aquí está ${is}. Solo puede ser: ${values}. Corrígelo.`,
  noneOf: (is, values) =>
    `Aquí está ${is}, que no es de los que conoce un protocolo.${values ? ` Solo puede ser: ${values}.` : ""} Corrígelo.`,
  atLeast: (what, least) => `${measures[what][0]}: ${least} como mínimo. Corrígelo.`,
  atMost: (what, most) => `${measures[what][1]}: ${most} como máximo. Corrígelo.`,
  noDay: (is) => `${is} no es un día del calendario. Escríbelo así: 2026-11-25.`,
  malformed: (is, why) => `${is} no está bien formado: ${why}. Corrígelo.`,
  other: (why) => `${why}. Corrígelo.`,
  twoItems: (id) => `Dos cosas se llaman "${id}".`,
  twoProducts: (id) => `Dos productos son "${id}".`,
  twoFlows: (event) => `El suceso "${event}" tiene dos listas de pasos.`,
  twoSteps: (id) => `Dos pasos se llaman "${id}".`,
  ownName: (id) => `"${id}" empieza como los pasos propios del acompañante. Dale otro id al paso.`,
  noItem: (id) => `Nada se llama "${id}". Añádelo a "items".`,
  noItemOfStep: (id) => `Nada se llama "${id}". Añádelo a "items" o corrige el paso.`,
  noProduct: (id) => `Ningún producto se llama "${id}". Añádelo a "products".`,
  noDisinfectant: (id) => `"${id}" no es un desinfectante de superficies. Solo uno de esos deja limpia una cosa.`,
  noAntiseptic: (id) => `"${id}" no es un antiséptico de piel. Nada más va sobre la piel.`,
};
