/**
 * What a verifier says it expected and found, where it says so in words, in Spanish. It states codes and figures, which
 * read in any language, and a closed set of short English texts between them: those are put here.
 */
const whole: Readonly<Record<string, string>> = {
  "v1.SessionBegan first, and only then": "v1.SessionBegan primero, y solo entonces",
  "nothing after v1.SessionClosed": "nada después de v1.SessionClosed",
  nothing: "nada",
  "none, or ready": "ninguno, o listo",
  counting: "contando",
  timeUp: "tiempo cumplido",
  "time up": "tiempo cumplido",
  doubtful: "en duda",
  "doubtful or time up": "en duda o tiempo cumplido",
  "past its re-apply time": "pasada la hora de mojar otra vez",
  "due for re-application": "a punto de mojarse otra vez",
  "to be wetted once more": "por mojar una vez más",
  running: "en marcha",
  ready: "listo",
  dry: "seco",
  "no clock": "ningún reloj",
  done: "hecho",
  "left out": "saltado",
  "nothing to undo": "nada que deshacer",
  "an order that the rules allow": "un orden que permitan las reglas",
  "a reusable thing that is here": "algo reutilizable que esté aquí",
  "a thing that is out of use": "algo que esté fuera de uso",
  "the set-up walked": "la preparación recorrida",
  "no wet clock running": "ningún reloj de mojado en marcha",
  "all steps of resuming done": "todos los pasos para seguir hechos",
  "no step left": "ningún paso pendiente",
  "sharps settled": "los cortopunzantes aclarados",
  "a seal": "un sello",
  "none: facts may be missing": "ninguno: pueden faltar hechos",
  "this device's signature": "la firma de este dispositivo",
  "nothing: no commitment stands there": "nada: allí no hay ningún compromiso",
  "something else": "otra cosa",
  "other bytes": "otros bytes",
  "a record": "un registro",
  "a record that can be read": "un registro que se pueda leer",
  "the shape of a record": "la forma de un registro",
  "something nested too deeply": "algo anidado demasiado hondo",
  "whole characters (RFC 8785 section 3.2.2.2)": "caracteres enteros (RFC 8785, sección 3.2.2.2)",
  "half of a pair": "medio par",
  "none by that key": "ninguna de esa clave",
  "no sound that plays": "ningún sonido que suene",
};

const patterns: readonly (readonly [RegExp, string])[] = [
  [/^at least (\S+ ms)$/, "al menos $1"],
  [/^at most (\S+ (?:ms|bytes))$/, "como mucho $1"],
  [/^wet within (\S+ ms)$/, "mojado dentro de $1"],
  [/^(\S+) to (\S+ ms)$/, "de $1 a $2"],
  [/^(\S+) or (.+)$/, "$1 o $2"],
  [/^(\S+) entries$/, "$1 hechos"],
  [/^(\S+) signatures$/, "$1 firmas"],
  [/^(\S+ ms) of sound$/, "$1 de sonido"],
  [/^format (\S+); a newer app reads this one$/, "formato $1; este lo lee una aplicación más nueva"],
  [/^a signature by (.+)$/, "una firma de $1"],
  [/^(.+) at character (\d+)$/, "$1 en el carácter $2"],
  [/^(\S+) of (\S+)$/, "$1 de $2"],
  [/^(v1\.\S+|\d+) with (.*)$/s, "$1 con $2"],
  [/^(\d+) (\S+), number (\d+): (.*)$/s, "$1 $2, número $3: $4"],
];

export function termEs(text: string): string {
  if (Object.hasOwn(whole, text)) return whole[text] ?? text;
  const found = patterns.find(([pattern]) => pattern.test(text));
  return found ? text.replace(...found) : text;
}
