import { AIR_DAY_SHAPE, type DayExtremes } from '../../src/seedbed/sun/day-curve.js';
import { diffusivityOf } from '../../src/seedbed/surface/ground.js';
import { brierScore } from '../accuracy/yardsticks/brier-score.js';
import { crpsEnsemble } from '../accuracy/yardsticks/crps-ensemble.js';
import { crpsNormal } from '../accuracy/yardsticks/crps-normal.js';
import { effectiveSampleSize } from '../accuracy/yardsticks/effective-sample-size.js';
import { elevenDayMeanC } from '../accuracy/yardsticks/eleven-day-mean.js';
import { explicitStepS } from '../accuracy/yardsticks/explicit-step.js';
import { intervalScore } from '../accuracy/yardsticks/interval-score.js';
import { kangFactor } from '../accuracy/yardsticks/kang-factor.js';
import { type KangGround, kangStepC } from '../accuracy/yardsticks/kang-step.js';
import { pinballLoss } from '../accuracy/yardsticks/pinball-loss.js';
import { publishedDay } from '../accuracy/yardsticks/published-day.js';
import { singleSineDayC } from '../accuracy/yardsticks/single-sine-day.js';
import { williamsDampingDepthMm } from '../accuracy/yardsticks/williams-damping-depth.js';
import { williamsDepthShare } from '../accuracy/yardsticks/williams-depth-share.js';
import { type WilliamsGround, williamsStepC } from '../accuracy/yardsticks/williams-step.js';
import type { Runners } from './out.js';

/** Simple published models that ours is compared with, and the scores that judge both. */
export const yardstickRunners: Runners = {
  'yardsticks/explicit-step': ({ diffusivityM2s, spacingM }: { diffusivityM2s: number; spacingM: number }) =>
    explicitStepS(diffusivityM2s, spacingM),
  'yardsticks/published-day': ({ hour, ...day }: DayExtremes & { hour: number }) =>
    publishedDay(hour, day, AIR_DAY_SHAPE),

  'seedbed/ground diffusivityOf': (given: { conductivity: number; heatCapacity: number }) => diffusivityOf(given),

  'yardsticks/kang-factor': (given: { depthCm: number; diffusivityM2s: number; cover: number }) =>
    kangFactor(given.depthCm, given.diffusivityM2s, given.cover),
  'yardsticks/kang-step': ({ soilC, airC, ...ground }: KangGround & { soilC: number; airC: number }) =>
    kangStepC(soilC, airC, ground),
  'yardsticks/eleven-day-mean': ({ airC }: { airC: readonly number[] }) => elevenDayMeanC(airC, airC.length - 1),
  'yardsticks/williams-depth-share': (given: { depthMm: number; dampingDepthMm: number }) =>
    williamsDepthShare(given.depthMm, given.dampingDepthMm),
  'yardsticks/williams-step': ({ soilC, surfaceC, ...ground }: WilliamsGround & { soilC: number; surfaceC: number }) =>
    williamsStepC(soilC, surfaceC, ground),
  'yardsticks/williams-damping-depth': ({ bulkDensity }: { bulkDensity: number }) =>
    williamsDampingDepthMm(bulkDensity),
  'yardsticks/single-sine-day': (given: { hour: number; minC: number; maxC: number; peakH: number }) =>
    singleSineDayC(given.hour, given.minC, given.maxC, given.peakH),

  'yardsticks/crps-normal': (given: { mean: number; sd: number; observed: number }) =>
    crpsNormal(given.mean, given.sd, given.observed),
  'yardsticks/crps-ensemble': (given: { members: readonly number[]; observed: number; fair: boolean }) =>
    crpsEnsemble(given.members, given.observed, given.fair),
  'yardsticks/interval-score': (given: { from: number; to: number; missed: number; observed: number }) =>
    intervalScore(given.from, given.to, given.missed, given.observed),
  'yardsticks/brier-score': (given: { probabilities: readonly number[]; came: readonly number[] }) =>
    brierScore(given.probabilities, given.came),
  'yardsticks/pinball-loss': (given: { quantile: number; share: number; observed: number }) =>
    pinballLoss(given.quantile, given.share, given.observed),
  'yardsticks/effective-sample-size': ({ n, lag1 }: { n: number; lag1: number }) => effectiveSampleSize(n, lag1),
};
