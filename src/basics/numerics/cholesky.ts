import { ScienceError } from '../errors.js';

/**
 * The Cholesky factor of a symmetric positive definite matrix: the lower triangle L with L Lᵀ = A.
 *
 * @param matrix A, row by row; only the lower triangle is read. Shape (n x n).
 * @param n      Rows, n >= 0.
 * @returns L, row by row, zero above the diagonal. Shape (n x n).
 * @throws ScienceError `out-of-range` when A is not positive definite, to the precision of a double.
 *
 * Formula: L[i][j] = (A[i][j] - Σ_k<j L[i][k] L[j][k]) / L[j][j]; L[i][i] = sqrt(A[i][i] - Σ_k<i L[i][k]²)
 * Cost: n³/6 multiplications.
 * Source: Golub, Van Loan (2013). Matrix Computations, 4th ed., 4.2.
 * @example choleskyFactor([4, 2, 2, 10], 2) // => [2, 0, 1, 3]
 */
export function choleskyFactor(matrix: ArrayLike<number>, n: number): Float64Array {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) rest -= lower[i * n + k]! * lower[j * n + k]!;
      if (i !== j) {
        lower[i * n + j] = rest / lower[j * n + j]!;
        continue;
      }
      if (!(rest > 0)) throw new ScienceError('out-of-range', `choleskyFactor takes a positive definite matrix`);
      lower[i * n + i] = Math.sqrt(rest);
    }
  }
  return lower;
}

/**
 * Solves L y = b for a lower triangle L. With A = L Lᵀ, pᵀ A⁻¹ q is the inner product of the two solutions for p and q.
 *
 * @param lower L, row by row, from `choleskyFactor`. Shape (n x n).
 * @param b     Right-hand side. Shape (n).
 * @returns y. Shape (n).
 * @example solveLower([2, 0, 1, 3], [2, 7]) // => [1, 2]
 */
export function solveLower(lower: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const n = b.length;
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let rest = b[i]!;
    for (let k = 0; k < i; k++) rest -= lower[i * n + k]! * y[k]!;
    y[i] = rest / lower[i * n + i]!;
  }
  return y;
}

/**
 * Solves Lᵀ x = y for a lower triangle L: after `solveLower`, x solves A x = b.
 *
 * @param lower L, row by row. Shape (n x n).
 * @param y     Right-hand side. Shape (n).
 * @returns x. Shape (n).
 * @example solveUpper([2, 0, 1, 3], [1, 6]) // => [-0.5, 2]
 */
export function solveUpper(lower: ArrayLike<number>, y: ArrayLike<number>): Float64Array {
  const n = y.length;
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let rest = y[i]!;
    for (let k = i + 1; k < n; k++) rest -= lower[k * n + i]! * x[k]!;
    x[i] = rest / lower[i * n + i]!;
  }
  return x;
}
