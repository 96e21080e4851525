/** Half precision, the "binary16" of IEEE 754-2019: 1 sign bit, 5 bits of exponent (bias 15), 10 of fraction (§3.4, §3.6). */

const infinity = 31;
/** What one unit of the fraction is worth, by exponent; 0 holds the subnormals and zero, with no hidden bit. */
const units = Float64Array.from({ length: infinity }, (_, exponent) => 2 ** (Math.max(exponent, 1) - 25));

/** @param half 0..65535. @returns the same number; exact, since every half is a float32 too. */
export function fromHalf(half: number): number {
  const exponent = (half >> 10) & 31;
  const fraction = half & 1023;
  const sign = half & 0x8000 ? -1 : 1;
  if (exponent === infinity) return fraction === 0 ? sign * Number.POSITIVE_INFINITY : Number.NaN;
  return sign * (exponent === 0 ? fraction : 1024 + fraction) * (units[exponent] as number);
}

/** All of them. A plain loop: `Float32Array.from` takes many times longer over a model's million and a half. */
export function widened(halves: Uint16Array): Float32Array {
  const wide = new Float32Array(halves.length);
  for (let n = 0; n < halves.length; n++) wide[n] = fromHalf(halves[n] as number);
  return wide;
}
