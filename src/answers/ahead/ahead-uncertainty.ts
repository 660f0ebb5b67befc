import { fadingAnomaly } from '../../climate/fading-anomaly.js';
import { comingUncertaintyK } from '../forecast/coming-uncertainty.js';
import type { SoilRecord } from '../soil/soil-record.js';
import type { PastSoil } from './past-soil.js';
import { anomalyLeft, comingWeight, SOIL_LAG_1 } from './years-ahead.js';

/** Days of soil at 5 cm lie so far from the usual [K]: median of 103 stations of the U.S. Climate Reference Network. */
const CLIMATOLOGICAL_SD_K = 2.25;

/**
 * How far the soil may be off in the hours after the last measured one, were the past years' weather to come again.
 *
 * What the probe has taught of the bed, growing to what is known of it without; on it the doubt of the coming days, as
 * far as they are trusted, and fading after them. Of a usual year made from normals the weather itself comes on top.
 *
 * @param soil   What is known up to now.
 * @param past   The years.
 * @param ahead  From which hour of the record on, how many hours, and how many of them are coming days.
 * @returns Standard deviation of a day's mean [K]. Shape (nHours).
 */
export function aheadUncertaintyK(
  soil: Pick<SoilRecord, 'sdK' | 'sdAheadK'>,
  past: Pick<PastSoil, 'sdK' | 'isUsual'>,
  { fromH, nHours, comingH }: { readonly fromH: number; readonly nHours: number; readonly comingH: number },
): Float64Array {
  const nDays = Math.ceil(nHours / 24);
  const lastK = soil.sdK[fromH - 1] ?? 0;
  const farK = past.sdK ?? lastK;
  const soilK =
    soil.sdAheadK?.(nDays) ??
    Float64Array.from({ length: nDays }, (_, day) => {
      const left = SOIL_LAG_1 ** (2 * (day + 1));
      return Math.sqrt(farK * farK + (lastK * lastK - farK * farK) * left);
    });
  const lastComing = Math.floor((comingH - 1) / 24);
  const ofForecast = (hour: number): number => comingWeight(hour) * comingUncertaintyK(Math.floor(hour / 24));
  return Float64Array.from({ length: nHours }, (_, hour) => {
    const day = Math.floor(hour / 24);
    const comingK =
      hour < comingH ? ofForecast(hour) : comingH > 0 ? ofForecast(24 * lastComing) * anomalyLeft(hour - comingH) : 0;
    const weatherK = past.isUsual ? fadingAnomaly(0, CLIMATOLOGICAL_SD_K, SOIL_LAG_1, day + 1).sdK : 0;
    return Math.hypot(soilK[day]!, comingK, weatherK);
  });
}
