/**
 * The discrete Fourier transform, in place. Exchanging the two parts gives the inverse, n times too large.
 *
 * @param real Real parts. Shape (n), n a power of two.
 * @param imag Imaginary parts. Shape (n).
 *
 * Formula: X[k] = Σ_j x[j] e^(-2πi j k / n)
 * Cost: n log2(n) / 2 complex multiplications.
 * Source: Cooley, Tukey (1965). An algorithm for the machine calculation of complex Fourier series. Math. Comput. 19:
 * 297-301.
 */
export function fft(real: Float64Array, imag: Float64Array): void {
  const n = real.length;
  reverseBits(real, imag);
  const cosine = Float64Array.from({ length: n / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / n));
  const sine = Float64Array.from({ length: n / 2 }, (_, k) => -Math.sin((2 * Math.PI * k) / n));
  for (let half = 1; half < n; half *= 2) {
    const stride = n / (2 * half);
    for (let start = 0; start < n; start += 2 * half) {
      for (let k = 0; k < half; k++) {
        const [even, odd] = [start + k, start + k + half];
        const c = cosine[k * stride]!;
        const s = sine[k * stride]!;
        const turnedReal = real[odd]! * c - imag[odd]! * s;
        const turnedImag = real[odd]! * s + imag[odd]! * c;
        real[odd] = real[even]! - turnedReal;
        imag[odd] = imag[even]! - turnedImag;
        real[even]! += turnedReal;
        imag[even]! += turnedImag;
      }
    }
  }
}

/** Bit-reversal permutation, which the transform needs first. */
function reverseBits(real: Float64Array, imag: Float64Array): void {
  const n = real.length;
  for (let i = 0, j = 0; i < n; i++) {
    if (i < j) {
      [real[i], real[j]] = [real[j]!, real[i]!];
      [imag[i], imag[j]] = [imag[j]!, imag[i]!];
    }
    let bit = n >> 1;
    for (; bit > 0 && j & bit; bit >>= 1) j ^= bit;
    j |= bit;
  }
}
