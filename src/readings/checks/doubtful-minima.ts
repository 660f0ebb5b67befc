import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Fact } from '../../basics/fact.js';
import { seriesWarning } from '../readings-facts.js';

/** Colder than both nights beside it by more than this, with afternoons alike, no night of the air has been [K]. */
const DROP_K = 12;
/** Afternoons that differ by no more than this are alike [K]: half the drop. Our choice. */
const ALIKE_K = 6;

/** One day's air; null where it is not known [°C]. */
interface AirDayAbove {
  readonly date: PlainDate;
  readonly min: number | null;
  readonly max: number | null;
}

/**
 * Whether a night fell far below both of its neighbours while the afternoons did not move: a failed reading, not frost.
 *
 * @param mins  Minima of the day before, the day itself and the day after [°C]; NaN where one is not known.
 * @param maxes Maxima of the same [°C].
 * @returns false where anything is not known.
 *
 * Validity: of 80,000 days at 13 stations of the U.S. Climate Reference Network four are met, one of them a 0.0 °C among nights of
 * 13 °C in March at Newton, Georgia, and three in midwinter, where no frost date hangs on them.
 * @example isDoubtfulMinimum([14.1, 0, 13.8], [24, 23.5, 25]) // => true
 */
export const isDoubtfulMinimum = (
  [minBefore, min, minAfter]: readonly [number, number, number],
  [maxBefore, max, maxAfter]: readonly [number, number, number],
): boolean =>
  min < minBefore - DROP_K &&
  min < minAfter - DROP_K &&
  Math.abs(max - maxBefore) <= ALIKE_K &&
  Math.abs(max - maxAfter) <= ALIKE_K;

/** The days whose minimum no frost is told from, in the order of dates. */
export function doubtfulMinima<D extends AirDayAbove>(days: readonly D[]): D[] {
  return days.filter((day, i) => {
    const [before, after] = [days[i - 1], days[i + 1]];
    if (!before || !after) return false;
    const isDoubtful = isDoubtfulMinimum(
      [degrees(before.min), degrees(day.min), degrees(after.min)],
      [degrees(before.max), degrees(day.max), degrees(after.max)],
    );
    return isDoubtful && daysBetween(before.date, after.date) === 2;
  });
}

const degrees = (value: number | null): number => value ?? Number.NaN;

/** Notes on such days; none where there are none. */
export function doubtfulMinimaNotes(days: readonly AirDayAbove[]): Fact[] {
  const doubtful = doubtfulMinima(days);
  const [first] = doubtful;
  if (!first) return [];
  return [
    seriesWarning('doubtful-minimum', {
      days: doubtful.length,
      date: first.date,
      minC: tenth(first.min!),
    }),
  ];
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
