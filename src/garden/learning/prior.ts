import type { PlainDate } from '../../basics/calendar.js';
import { choleskyFactor, solveLower, solveUpper } from '../../basics/numerics/cholesky.js';
import { logit } from '../../basics/numerics/logit.js';
import type { Crop, Span } from '../../germination/crop.js';
import { correlationKernel } from './correlation-kernel.js';

export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** Prior of a sowing's emergence delay factor and stand, before any count. */
export interface Prior {
  /** Natural logarithm of the time factor. */
  readonly logTime: Normal;
  /** Logit of the stand factor, of a sowing that lives. */
  readonly logitStand: Normal;
  /** Probability that nothing emerges, 0 to 1. */
  readonly deadShare: number;
}

/** The published range of a factor is taken to hold so many standard deviations to either side: it is of few beds and years. */
const RANGE_SD = 1.6;
/** No crop's beds are alike to less than this: standard deviations of the logarithm of time, and of the logit of the stand. */
const MIN_TIME_SD = 0.1;
const MIN_STAND_SD = 0.3;
/** Sowings of which nothing comes, for whatever reason: our assumption. */
const DEAD_SHARE = 0.07;
/** A share is kept off 0 and 1, whose logits are endless. */
const OFF_ENDS = 0.03;

/** Prior in a bed that has taught nothing: the crop's published ranges. */
export function usualPrior({ bedTimeFactor, field }: Pick<Crop, 'bedTimeFactor' | 'field'>): Prior {
  const logitOf = (share: number): number => logit(Math.min(1 - OFF_ENDS, Math.max(OFF_ENDS, share)));
  return {
    logTime: within({ from: Math.log(bedTimeFactor.from), to: Math.log(bedTimeFactor.to) }, MIN_TIME_SD),
    logitStand: within({ from: logitOf(field.from), to: logitOf(field.to) }, MIN_STAND_SD),
    deadShare: DEAD_SHARE,
  };
}

const within = ({ from, to }: Span, leastSd: number): Normal => ({
  mean: (from + to) / 2,
  sd: Math.max(leastSd, (to - from) / 2 / RANGE_SD),
});

/** Lesson of an earlier sowing of the same crop in the same bed. */
export interface Lesson {
  readonly date: PlainDate;
  readonly lot: string | null;
  /** Likelihood of its counts as a Gaussian; null: uninformative. */
  readonly logTime: Normal | null;
  readonly logitStand: Normal | null;
}

/**
 * Prior of a sowing after the lessons of earlier ones in its bed.
 *
 * @param usual   What is supposed of any bed.
 * @param lessons Earlier or later sowings of the same crop in the bed, in any order.
 * @param sowing  The sowing's date and lot.
 * @returns The belief; with no lesson the usual one. Its spread is never wider than the usual one.
 *
 * Formula: the factors of all sowings are jointly normal, of the usual mean and spread; two of them go together by
 * 0.7 · 2^(-days/730) · (0.8 + 0.2 cos(2π days/365.25)) · (1, or 0.8 of another lot).
 * Source: regression of Gaussian processes as in Rasmussen, Williams (2006), Gaussian Processes for Machine Learning, Eqns
 * 2.25 and 2.26; the kernel's numbers are ours.
 */
export function priorAfter(usual: Prior, lessons: readonly Lesson[], sowing: Pick<Lesson, 'date' | 'lot'>): Prior {
  return {
    ...usual,
    logTime: regressed(usual.logTime, lessons, sowing, ({ logTime }) => logTime),
    logitStand: regressed(usual.logitStand, lessons, sowing, ({ logitStand }) => logitStand),
  };
}

function regressed(
  usual: Normal,
  lessons: readonly Lesson[],
  sowing: Pick<Lesson, 'date' | 'lot'>,
  taught: (lesson: Lesson) => Normal | null,
): Normal {
  const told = lessons.flatMap((lesson) => {
    const one = taught(lesson);
    return one ? [{ ...one, lesson }] : [];
  });
  if (told.length === 0) return usual;
  const variance = usual.sd ** 2;
  const n = told.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) matrix[i * n + j] = variance * correlationKernel(told[i]!.lesson, told[j]!.lesson);
    matrix[i * n + i] = variance + told[i]!.sd ** 2;
  }
  const lower = choleskyFactor(matrix, n);
  const shared = told.map(({ lesson }) => variance * correlationKernel(lesson, sowing));
  const weights = solveUpper(lower, solveLower(lower, shared));
  let mean = usual.mean;
  let left = variance;
  told.forEach((one, i) => {
    mean += weights[i]! * (one.mean - usual.mean);
    left -= weights[i]! * shared[i]!;
  });
  return { mean, sd: Math.sqrt(left) };
}
