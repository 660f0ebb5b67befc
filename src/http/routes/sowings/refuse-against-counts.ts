import { addDays } from '../../../basics/calendar.js';
import { type Fault, notUnderstood } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import type { Count, SowingFields } from '../../../garden/store/season-store.js';
import { MAX_COUNT_DAYS } from '../../../germination/run/count-day.js';

/** Refuses a change that contradicts the sowing's counts. @throws {RequestError} `not-understood`. */
export function refuseAgainstCounts(counts: readonly Count[], { date, seeds }: SowingFields): void {
  const [first, last] = [counts[0], counts.at(-1)];
  if (!first || !last) return;
  const faults: Fault[] = [];
  if (date > first.date) {
    faults.push({
      path: ['date'],
      detail: fieldFact('field.after-first-count', { countedOn: first.date }),
    });
  }
  if (last.date > addDays(date, MAX_COUNT_DAYS)) {
    faults.push({
      path: ['date'],
      detail: fieldFact('field.long-before-count', { maxDays: MAX_COUNT_DAYS, countedOn: last.date }),
    });
  }
  const whole = counts.filter(({ ofSeeds }) => ofSeeds === null);
  const most = Math.max(
    0,
    ...whole.map(({ seedlings, thinned }) => seedlings + (typeof thinned === 'number' ? thinned : 0)),
  );
  if (most > (seeds ?? 0)) {
    faults.push({
      path: ['seeds'],
      detail: fieldFact('field.fewer-than-counted', { seedlings: most }),
    });
  }
  if (faults.length > 0) throw notUnderstood(faults);
}
