/**
 * Saturated steam: at a given pressure it has one temperature. Readings that do not fit it mean air or superheat.
 * IAPWS-IF97 region 4, equations 30 and 31 (Wagner et al. 2000), valid from 273.15 K to 647.096 K.
 */

const n = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const zeroCelsiusK = 273.15;
const leastK = 273.15;
const mostK = 647.096;
const leastMPa = 0.000611213;
const mostMPa = 22.064;

/** @returns kPa absolute; null outside the range of the formulation. */
export function saturationKPa(celsius: number): number | null {
  const kelvin = celsius + zeroCelsiusK;
  if (!(kelvin >= leastK && kelvin <= mostK)) return null;
  const t = kelvin + n[8] / (kelvin - n[9]);
  const a = t * t + n[0] * t + n[1];
  const b = n[2] * t * t + n[3] * t + n[4];
  const c = n[5] * t * t + n[6] * t + n[7];
  return ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4 * 1000;
}

/** @returns °C at which steam of this absolute pressure condenses; null outside the range of the formulation. */
export function saturationCelsius(kPaAbs: number): number | null {
  const mpa = kPaAbs / 1000;
  if (!(mpa >= leastMPa && mpa <= mostMPa)) return null;
  const beta = mpa ** 0.25;
  const e = beta * beta + n[2] * beta + n[5];
  const f = n[0] * beta * beta + n[3] * beta + n[6];
  const g = n[1] * beta * beta + n[4] * beta + n[7];
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const kelvin = (n[9] + d - Math.sqrt((n[9] + d) ** 2 - 4 * (n[8] + n[9] * d))) / 2;
  return kelvin - zeroCelsiusK;
}
