import { HOUR_MS } from '../../basics/calendar.js';
import type { DoubtTest, Judged } from './doubt-input.js';
import { type DoubtLimits, TELLING_MS } from './doubt-limits.js';
import type { VerdictBook } from './doubt-verdicts.js';

/**
 * Marks as doubtful the first reading after a change that is too fast, once for each event; never drops.
 *
 * The limit is one for an hour, and within an hour it is not scaled down: a reading is held against the one before it
 * and the first of the hour up to it, so one limit serves steps of a second and of an hour, and neither a count of a
 * coarse thermometer nor the cold water of a can is a fault for being quick. Readings one to three hours apart may
 * differ by the limit times the hours; beyond that nothing is told. Too fast a change within an hour (or one reading)
 * of the last belongs to the same event: out of the bed and back again is told once.
 *
 * @param code One for each reading, 0 where not doubted so far; written to. Readings that are not 0 are passed over.
 * @example of 14, 14.1, 20.2, 20.3 °C at 5 cm, ten minutes apart: readings doubted // => 1
 */
export function stepTest(
  { atMs, valueC }: Judged,
  limits: DoubtLimits,
  book: VerdictBook,
  code: Uint8Array,
): DoubtTest {
  const { stepK } = limits;
  // The last reading, the first of the hour up to it, and when a change was last too fast.
  let last = -1;
  let hourFrom = -1;
  let lastFastMs = Number.NEGATIVE_INFINITY;
  return (from, to) => {
    let before = last;
    let first = hourFrom;
    for (let i = from; i < to; i++) {
      if (code[i] !== 0) continue;
      const now = atMs[i]!;
      const tempC = valueC[i]!;
      if (before < 0) first = before = i;
      const dtMs = now - atMs[before]!;
      let changeK = Math.abs(tempC - valueC[before]!);
      let limitK = stepK;
      if (dtMs <= HOUR_MS) {
        while (now - atMs[first]! > HOUR_MS) {
          do first++;
          while (first < i && code[first] !== 0);
        }
        const hourK = Math.abs(tempC - valueC[first]!);
        if (hourK > changeK) changeK = hourK;
      } else {
        first = i;
        limitK = dtMs > TELLING_MS ? Number.POSITIVE_INFINITY : stepK * (dtMs / HOUR_MS);
      }
      before = i;
      if (changeK <= limitK) continue;
      if (now - lastFastMs > Math.max(HOUR_MS, dtMs)) code[i] = book.codeOf('step', changeK);
      lastFastMs = now;
      first = i;
    }
    last = before;
    hourFrom = first;
  };
}
