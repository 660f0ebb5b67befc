import { describe, expect, it } from 'vitest';
import type { Question } from '../../../src/answers/question.js';
import { usualPrior } from '../../../src/garden/learning/prior.js';
import { withSoilUncertainty } from '../../../src/garden/learning/soil-uncertainty.js';
import { cropCalled } from '../germination/make.js';

const prior = usualPrior(cropCalled('carrot'));

/** What the soil adds to the variance of the logarithm of time, as a standard deviation. */
function addedSd(kind: 'open-ground' | 'indoors', media: readonly ('air' | 'soil')[]): number {
  const question = { bed: { kind }, series: media.map((medium) => ({ medium })) } as unknown as Question;
  const { mean, sd } = withSoilUncertainty(prior, question).logTime;
  expect(mean).toBe(prior.logTime.mean);
  return Math.sqrt(sd ** 2 - prior.logTime.sd ** 2);
}

describe('the uncertainty of the soil', () => {
  // Time goes as 1/(T - base): at ten kelvins above the base a kelvin is a tenth of it.
  it('is that of a kelvin of ten where it is worked out from air, and of half a kelvin where a probe measured it', () => {
    const KELVINS_ABOVE_BASE = 10;
    expect(addedSd('open-ground', ['air'])).toBeCloseTo(1 / KELVINS_ABOVE_BASE, 9);
    expect(addedSd('open-ground', ['air', 'soil'])).toBeCloseTo(0.5 / KELVINS_ABOVE_BASE, 9);
  });

  it('is none in a room', () => {
    expect(addedSd('indoors', ['air'])).toBe(0);
  });
});
