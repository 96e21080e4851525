/** A 512-point complex Fourier transform in place (radix 2, decimation in time). Deterministic: tables are made once, in doubles. */

export const fftSize = 512;
const half = fftSize / 2;

const cosine = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / fftSize));
const sine = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / fftSize));
const reversed = Uint16Array.from({ length: fftSize }, (_, i) => {
  let r = 0;
  for (let bit = 0; bit < 9; bit++) if (i & (1 << bit)) r |= 256 >> bit;
  return r;
});

/**
 * Transforms `re` + i·`im`, each 512 long, in place: X[k] = Σ x[n]·e^(−2πi·kn/512), unscaled.
 */
export function fft(re: Float64Array, im: Float64Array): void {
  for (let i = 0; i < fftSize; i++) {
    const j = reversed[i] as number;
    if (j > i) {
      const a = re[i] as number;
      const b = im[i] as number;
      re[i] = re[j] as number;
      im[i] = im[j] as number;
      re[j] = a;
      im[j] = b;
    }
  }
  for (let span = 1; span < fftSize; span <<= 1) {
    const turn = half / span;
    for (let k = 0; k < span; k++) {
      const c = cosine[k * turn] as number;
      const s = sine[k * turn] as number;
      for (let i = k; i < fftSize; i += span << 1) {
        const j = i + span;
        const x = re[j] as number;
        const y = im[j] as number;
        const tr = x * c + y * s;
        const ti = y * c - x * s;
        const ur = re[i] as number;
        const ui = im[i] as number;
        re[j] = ur - tr;
        im[j] = ui - ti;
        re[i] = ur + tr;
        im[i] = ui + ti;
      }
    }
  }
}
