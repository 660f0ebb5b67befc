import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { type FrostSide, frostDates } from '../../climate/frost-dates.js';
import { isFrostHollow } from '../../climate/frost-hollow.js';
import { doubtfulMinima, doubtfulMinimaNotes } from '../../readings/checks/doubtful-minima.js';
import { answerRefusal } from '../refusal-facts.js';
import { type FrostNote, frostWarning } from './window-facts.js';

/** When frosts come at a place, and the years that say so. */
export interface FrostAnswer {
  readonly thresholdC: number;
  readonly lastSpringFrost: FrostSide;
  readonly firstAutumnFrost: FrostSide;
  /** null: typical years of a climate. */
  readonly years: { readonly from: number | null; readonly to: number | null };
  readonly assumptions: readonly FrostNote[];
  readonly warnings: readonly Fact[];
}

const IN_THE_AIR: FrostNote = { code: 'frost-in-the-air', params: {} };
const LEFT_OUT: FrostNote = { code: 'frost-left-out', params: {} };

const isWhole = ({ risk10, risk50, risk90 }: FrostSide): boolean =>
  risk10 !== null && risk50 !== null && risk90 !== null;

/**
 * When the last frost of spring and the first of autumn come at a place, from the air of its past years.
 *
 * @param air         Days in the order of dates, in °C; holes are missing days. A minimum that hardly can be true counts as missing.
 * @param thresholdC  A day whose minimum is this or below has a frost [°C].
 * @param latitudeDeg Latitude, north positive [°].
 * @throws {RequestError} `no-past-years` where no season is known well enough.
 */
export function frostDatesOfPlace(
  air: readonly { readonly date: PlainDate; readonly min: number | null; readonly max: number | null }[],
  thresholdC: number,
  latitudeDeg: number,
): FrostAnswer {
  const known = air.filter(({ min }) => min !== null);
  const [first, last] = [known[0]?.date, known.at(-1)?.date];
  if (first === undefined || last === undefined) throw noYears(answerRefusal('no-past-years.no-minima'));
  const minC = new Float64Array(daysBetween(first, last) + 1).fill(Number.NaN);
  for (const { date, min } of known) minC[daysBetween(first, date)] = min!;
  for (const { date } of doubtfulMinima(air)) minC[daysBetween(first, date)] = Number.NaN;
  const isHollow = isFrostHollow({ firstDate: first, minC }, latitudeDeg);
  const { spring, autumn } = frostDates({ firstDate: first, minC }, thresholdC, latitudeDeg);
  if (spring.seasons === 0 && autumn.seasons === 0) {
    throw noYears(answerRefusal('no-past-years.no-season', { from: first, to: last }));
  }
  return {
    thresholdC,
    lastSpringFrost: spring,
    firstAutumnFrost: autumn,
    years: { from: Number(first.slice(0, 4)), to: Number(last.slice(0, 4)) },
    assumptions: isWhole(spring) && isWhole(autumn) ? [IN_THE_AIR] : [IN_THE_AIR, LEFT_OUT],
    warnings: [
      ...doubtfulMinimaNotes(air),
      ...(isHollow ? [frostWarning('frost-hollow', { summer: latitudeDeg < 0 ? 'south' : 'north' })] : []),
    ],
  };
}

const noYears = (why: Fact): RequestError => new RequestError('no-past-years', why);
