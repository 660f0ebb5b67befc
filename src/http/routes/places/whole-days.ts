import type { FastifyRequest } from 'fastify';
import { RequestError } from '../../../basics/errors.js';
import type { Fact } from '../../../basics/fact.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { keptNote, keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { AirDay } from '../../../garden/store/store.js';
import type { ReadSeries } from '../../../readings/read-series.js';
import { seriesFault } from '../../question/upload.js';

/** The complete days of a series of air. */
export function wholeDays(
  request: FastifyRequest,
  { medium, days }: ReadSeries,
): { days: AirDay[]; incomplete: number } {
  if (medium !== 'air') {
    throw seriesFault(request, 'medium', fieldFact('field.not-air'));
  }
  const whole = days.filter(({ complete }) => complete);
  if (whole.length === 0) {
    throw new RequestError('too-few-readings', keptRefusal('too-few-readings.air'));
  }
  const air = whole.map(({ date, min, mean, max }) => ({ date, min, mean, max }));
  return { days: air, incomplete: days.length - whole.length };
}

/** Notes the number of days left out. */
export const incompleteNotes = (days: number): Fact[] => (days === 0 ? [] : [keptNote('incomplete-days', { days })]);
