import { ScienceError } from '../../../src/basics/errors.js';

/**
 * The continuous ranked probability score of an ensemble: members held to be equally likely.
 *
 * @param members  In any unit. Shape (m), m >= 1; two or more where it is to be fair.
 * @param observed What came, in the same.
 * @param isFair   As if the ensemble had many members of its kind: few are not blamed for being few.
 * @returns The score, in the same unit; the less the better. A fair one can be below 0.
 * @throws ScienceError `empty` for too few members.
 *
 * Formula: mean|x - y| - Σij |xi - xj| / (2m²), fair / (2m (m - 1))
 * Source: Gneiting, Raftery (2007), as `crpsNormal`; Ferro (2014). Fair scores for ensemble forecasts. Q. J. R.
 * Meteorol. Soc. 140: 1917-1923.
 * @example crpsEnsemble([1, 2, 4], 3, false) // => 0.6667
 */
export function crpsEnsemble(members: ArrayLike<number>, observed: number, isFair: boolean): number {
  const n = members.length;
  if (n < (isFair ? 2 : 1)) throw new ScienceError('empty', `crpsEnsemble takes more members than ${n}`);
  const sorted = Float64Array.from(members).sort();
  let off = 0;
  // Half the sum of all pairs' distances: in order, the i-th is above i others and below n - 1 - i.
  let apart = 0;
  sorted.forEach((member, i) => {
    off += Math.abs(member - observed);
    apart += (2 * i + 1 - n) * member;
  });
  return off / n - apart / (isFair ? n * (n - 1) : n * n);
}
