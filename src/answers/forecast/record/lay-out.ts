import { HOUR_MS } from '../../../basics/calendar.js';
import { basisCode } from '../../../basics/series.js';
import { aheadUncertaintyK } from '../../ahead/ahead-uncertainty.js';
import { type Extrapolation, hoursAhead } from '../../ahead/hours-ahead.js';
import type { PastSoil } from '../../ahead/past-soil.js';
import type { YearsAhead } from '../../ahead/years-ahead.js';
import type { Site } from '../../soil/known-hours.js';
import type { FilledRecord } from './filled-record.js';

/** The hours from the record's start on. All of one length. */
export interface LaidOut {
  readonly hourlyC: Float64Array;
  /** Provenance of each hour: codes of basics/series. */
  readonly basis: Uint8Array;
  /** Standard deviation of a day's mean for want of knowing the soil, without that of the weather ahead [K]. */
  readonly sdK: Float64Array;
}

/** The source of the hours after the last value. */
export interface After {
  readonly beyond: Extrapolation;
  readonly past: PastSoil | null;
  readonly ahead: YearsAhead | null;
}

/**
 * The known hours, and those assumed after them, up to a total.
 *
 * @param record The known hours.
 * @param after  What follows the last value; with `refuse` nothing does.
 * @param total  Hours from the record's start on.
 */
export function layOut(record: FilledRecord, { beyond, past, ahead }: After, total: number, site: Site): LaidOut {
  const { soil, knownC, knownToH, measuredToH } = record;
  const all = {
    hourlyC: new Float64Array(total),
    basis: new Uint8Array(total),
    sdK: new Float64Array(total).fill(soil.sdK[knownToH - 1]!),
  };
  all.hourlyC.set(knownC.subarray(0, total));
  all.basis.set(soil.basis.subarray(0, Math.min(total, knownToH)));
  all.sdK.set(soil.sdK.subarray(0, Math.min(total, knownToH)));
  if (past && ahead && total > measuredToH) {
    const nHours = total - measuredToH;
    all.hourlyC.set(ahead.usual(nHours), measuredToH);
    // Usual air of a climate goes on as it began.
    const isTable = soil.basis[knownToH - 1] === basisCode('climate-table');
    all.basis.fill(basisCode(isTable ? 'climate-table' : 'past-years'), Math.min(total, knownToH));
    const comingH = knownToH - measuredToH;
    all.sdK.set(aheadUncertaintyK(soil, past, { fromH: measuredToH, nHours, comingH }), measuredToH);
  } else if (total > knownToH && beyond !== 'refuse') {
    // Seasonal persistence replaces past years while none is known.
    const assumed = beyond === 'repeat-last-week' ? beyond : 'seasonal-drift';
    const fromMs = soil.startMs + knownToH * HOUR_MS;
    all.hourlyC.set(hoursAhead(assumed, knownC, total - knownToH, fromMs, site), knownToH);
    all.basis.fill(basisCode(assumed === 'seasonal-drift' ? 'drift' : 'repeated'), knownToH);
  }
  return all;
}
