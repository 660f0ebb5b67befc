import { DAY_MS } from '../../basics/calendar.js';
import type { Medium } from '../../basics/series.js';
import { longestJoinedMs } from '../time/step.js';
import type { DoubtTest, Judged } from './doubt-input.js';
import type { VerdictBook } from './doubt-verdicts.js';

/** Flat for this long: doubtful; and no reading. The page's defaults for soil down to 10 cm. */
export const MIN_STUCK_MS = DAY_MS;
const DROPPED_MS = 3 * DAY_MS;

/** Down to here the day's wave reaches every probe [cm]. */
const DEEPEST_CM = 10;

/** Fewer equal readings prove nothing, however far apart: five days in a daily record. Chosen here. */
const DOUBTFUL_COUNT = 5;
const DROPPED_COUNT = 12;

/** From half a degree on a mild week may honestly stay on one count: everything is doubled. Chosen here. */
const COARSE_K = 0.5;

/** Whole degrees in a heated tray or a cellar stay the same for weeks: never dropped. Chosen here. */
const WHOLE_DEGREES_K = 0.9;

/** Freezing and thawing soil stands at 0 °C, to about this [K]. */
const CURTAIN_K = 0.3;

/** Under snow soil stays this near to 0 °C for weeks: doubted late, never dropped [K]. Chosen here. */
const UNDER_SNOW_K = 3;

/** A record that never moves gives nothing else to go on: doubted, never dropped. Chosen here. */
const MAX_SHARE = 0.99;

/** Values written alike may differ by this once converted [K]. */
const SAME_K = 1e-9;

/**
 * Marks runs of one and the same value, in air and in soil down to 10 cm: 24 h with at least 5 readings doubtful,
 * 72 h with at least 12 dropped, all of the run. Twice as long and as many where the thermometer writes steps of half
 * a degree or more. Whole degrees, and a run that is all of the record, are never dropped. Soil within 3 °C of freezing, perhaps under snow, is doubted where
 * other soil is dropped, and never dropped. Never doubted: 0.0 ± 0.3 °C, deeper soil. A gap ends a run, a dropped
 * reading does not.
 *
 * @param usualMs     Usual time between readings [ms], or null.
 * @param resolutionC One count of a coarse thermometer [K]; 0 for a fine one.
 * @param code        One for each reading, 0 where not doubted so far; written to. A doubt gives way to a drop.
 * @example of 14.2 °C every hour for 30 h in a record of tenths: readings doubted // => 31
 */
export function stuckTest(
  { atMs, valueC, count }: Judged,
  place: { readonly medium: Medium; readonly probeDepthCm: number | null },
  usualMs: number | null,
  resolutionC: number,
  book: VerdictBook,
  code: Uint8Array,
): DoubtTest {
  const soil = place.medium === 'soil';
  if (soil && (place.probeDepthCm ?? 0) > DEEPEST_CM) return () => {};
  const gapMs = longestJoinedMs(usualMs);
  const times = resolutionC >= COARSE_K ? 2 : 1;
  const isDropped = (i: number): boolean => code[i] !== 0 && book.verdicts[code[i]!]!.drop;

  const endRun = (first: number, last: number, readings: number): void => {
    const flatMs = atMs[last]! - atMs[first]!;
    if (flatMs < MIN_STUCK_MS * times || readings < DOUBTFUL_COUNT * times) return;
    const long = flatMs >= DROPPED_MS * times && readings >= DROPPED_COUNT * times;
    const awayK = Math.abs(valueC[first]!);
    const underSnow = soil && awayK <= UNDER_SNOW_K;
    if (awayK <= CURTAIN_K || (underSnow && !long)) return;
    const drop = long && !underSnow && resolutionC < WHOLE_DEGREES_K && readings <= MAX_SHARE * count;
    const verdict = book.codeOf(drop ? 'longStuck' : 'stuck', flatMs / DAY_MS);
    for (let i = first; i <= last; i++) if (code[i] === 0 || (drop && !isDropped(i))) code[i] = verdict;
  };

  // The run that is going on. Kept in locals within a piece: a number that a closure keeps is slow to change.
  let run = { first: -1, last: -1, readings: 0 };
  return (from, to) => {
    let { first, last, readings } = run;
    let flatC = first < 0 ? Number.NaN : valueC[first]!;
    for (let i = from; i < to; i++) {
      if (code[i] !== 0 && isDropped(i)) continue;
      if (!(Math.abs(valueC[i]! - flatC) <= SAME_K && atMs[i]! - atMs[last]! <= gapMs)) {
        if (readings >= DOUBTFUL_COUNT) endRun(first, last, readings);
        first = i;
        readings = 0;
        flatC = valueC[i]!;
      }
      readings++;
      last = i;
    }
    if (to === count && readings > 0) endRun(first, last, readings);
    run = { first, last, readings };
  };
}
