import { HOUR_MS } from '../../basics/calendar.js';
import type { DoubtTest, Judged } from './doubt-input.js';
import { type DoubtLimits, TELLING_MS } from './doubt-limits.js';
import type { VerdictBook } from './doubt-verdicts.js';

/**
 * Marks single readings that stand out from both neighbours: |x - (p + n)/2| - |(p - n)/2| above the limit is
 * doubtful, above the gross limit dropped. The measure is how far x lies beyond the nearer of the two, so a rise or a
 * fall, however steep, is no spike. Neighbours are readings not dropped.
 *
 * The limits are those of an hour and hold unchanged between closer readings: watering cools a bed in minutes and it
 * stays cool. Up to three hours they grow with the hours, as the top of a day's wave then stands out by itself;
 * beyond three hours, and beside a gap, nothing is told.
 *
 * @param code One for each reading, 0 where not dropped so far; written to.
 * @example of 14.3, 19, 14.5 °C at 5 cm, an hour apart: 4.5 K against 3, readings doubted // => 1
 */
export function spikeTest(
  { atMs, valueC }: Judged,
  limits: DoubtLimits,
  book: VerdictBook,
  code: Uint8Array,
): DoubtTest {
  const { spikeK, grossSpikeK } = limits;
  /** Marks x, which stands out between p and n; whether it is dropped. */
  const judge = (p: number, x: number, n: number): boolean => {
    const dtMs = Math.max(atMs[x]! - atMs[p]!, atMs[n]! - atMs[x]!);
    if (dtMs > TELLING_MS) return false;
    const beyondK = Math.min(Math.abs(valueC[x]! - valueC[p]!), Math.abs(valueC[x]! - valueC[n]!));
    const allowance = Math.max(1, dtMs / HOUR_MS);
    const gross = beyondK > grossSpikeK * allowance;
    if (gross) code[x] = book.codeOf('grossSpike', beyondK);
    else if (beyondK > spikeK * allowance) code[x] = book.codeOf('spike', beyondK);
    return gross;
  };

  // The last two readings not dropped. Kept in locals within a piece: a number that a closure keeps is slow to change.
  let lastP = -1;
  let lastX = -1;
  return (from, to) => {
    let p = lastP;
    let x = lastX;
    let riseK = p < 0 ? 0 : valueC[x]! - valueC[p]!;
    for (let n = from; n < to; n++) {
      if (code[n] !== 0) continue;
      const nextRiseK = x < 0 ? 0 : valueC[n]! - valueC[x]!;
      const out = riseK > spikeK ? nextRiseK < -spikeK : riseK < -spikeK && nextRiseK > spikeK;
      if (out && judge(p, x, n)) {
        x = n;
        riseK = valueC[x]! - valueC[p]!;
        continue;
      }
      p = x;
      x = n;
      riseK = nextRiseK;
    }
    lastP = p;
    lastX = x;
  };
}
