import { HOUR_MS, instantText } from '../../../basics/calendar.js';
import { RequestError } from '../../../basics/errors.js';
import { basisCode } from '../../../basics/series.js';
import { answerRefusal } from '../../refusal-facts.js';
import type { Site } from '../../soil/known-hours.js';

/** A gap that nothing but its two ends tell of. */
export interface LongGap {
  /** Hours after the wetting; negative where it begins before. */
  readonly fromH: number;
  /** The refusal for a question that needs the hours of the gap. */
  readonly refusal: RequestError;
}

/** No gap longer than this is filled since wetting [h]: nothing would be left to go by. */
const MAX_FILLED_H = 14 * 24;
const FILLED = basisCode('filled');

/** The first run of filled hours since the wetting that is longer than anything left to go by. */
export function longGapOf(basis: Uint8Array, imbibitionH: number, startMs: number, site: Site): LongGap | null {
  let fromH = -1;
  for (let hour = 0; hour <= basis.length; hour++) {
    const isFilled = basis[hour] === FILLED;
    if (isFilled && fromH < 0) fromH = hour;
    if (isFilled || fromH < 0) continue;
    if (hour > imbibitionH && hour - fromH > MAX_FILLED_H) {
      const [fromAt, toAt] = [fromH, hour].map((one) => instantText(startMs + one * HOUR_MS, site.zone)) as [
        string,
        string,
      ];
      const refusal = new RequestError('gap-too-long', answerRefusal('gap-too-long', { fromAt, toAt }));
      return { fromH: fromH - imbibitionH, refusal };
    }
    fromH = -1;
  }
  return null;
}
