import type { HourReadings } from '../../../answers/soil/hour-readings.js';
import type { SoilTemperatures } from '../../../answers/soil/soil-temperatures.js';
import { HOUR_MS, instantText, type Zone } from '../../../basics/calendar.js';
import type { HourlySeriesOut } from '../../../contract/series.js';
import type { SoilAnswer } from '../../../contract/soil.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { serializeReport } from '../readings/report-serializer.js';

/** Serializes soil temperatures, rounded as the caller requests. */
export function serializeSoil(
  { depthCm, daily, hours, understood, assumptions, warnings }: SoilTemperatures,
  zone: Zone,
  rounding: Rounding,
): Omit<Unworded<SoilAnswer>, 'model' | 'issuedAt'> {
  const { temperature } = rounding;
  return {
    series: daily
      ? {
          ...seriesOf(depthCm),
          daily: daily.map((day) => ({
            ...day,
            min: temperature(day.min),
            mean: temperature(day.mean),
            max: temperature(day.max),
            plusMinus: temperature(day.plusMinus),
          })),
        }
      : serializeHours(depthCm, hours!, zone, rounding),
    understood: understood.map((report) => serializeReport(report, rounding)),
    assumptions: [...assumptions],
    warnings: [...warnings],
  };
}

/** Hourly temperatures as a series that can be sent back. */
export const serializeHours = (
  depthCm: number,
  { startMs, tempC, basis }: HourReadings,
  zone: Zone,
  { temperature }: Rounding,
): HourlySeriesOut => ({
  ...seriesOf(depthCm),
  readings: Array.from(tempC, (value, hour) => ({
    at: instantText(startMs + hour * HOUR_MS, zone),
    value: temperature(value),
    basis: basis[hour]!,
  })),
});

const seriesOf = (depthCm: number) => ({ medium: 'soil', probeDepthCm: depthCm, unit: 'C' }) as const;
