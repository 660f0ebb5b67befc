import type { Question } from '../../answers/question.js';
import type { Prior } from './prior.js';

/**
 * Uncertainty of the emergence time for want of knowing the soil, by what its temperature comes from: standard deviation of
 * the natural logarithm of time [1]. Our assumption: the soil worked out from air is off by a kelvin, a probe's by half of
 * one, where seed grows at ten kelvins above its base.
 */
const SOIL_LOG_TIME_SD = { air: 0.1, probe: 0.05, room: 0 } as const;

/** A prior of the emergence delay factor, widened by the uncertainty of the soil temperature. */
export function withSoilUncertainty(prior: Prior, { bed, series }: Pick<Question, 'bed' | 'series'>): Prior {
  const by = bed.kind === 'indoors' ? 'room' : series.some(({ medium }) => medium === 'soil') ? 'probe' : 'air';
  const { mean, sd } = prior.logTime;
  return { ...prior, logTime: { mean, sd: Math.hypot(sd, SOIL_LOG_TIME_SD[by]) } };
}
