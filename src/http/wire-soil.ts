import type { SoilTemperatures } from '../answers/soil-temperatures.js';
import { HOUR_MS, instantText, type Zone } from '../basics/calendar.js';
import type { Rounding } from './rounding.js';
import type { SoilAnswer } from './schemas/soil.js';
import { reportOnWire } from './wire-report.js';

/** Soil temperatures in the contract's words, rounded as the caller wants them. */
export function soilOnWire(
  { depthCm, daily, hours, understood, assumptions, warnings }: SoilTemperatures,
  zone: Zone,
  rounding: Rounding,
): Omit<SoilAnswer, 'model' | 'issuedAt'> {
  const { temperature } = rounding;
  const shape = { medium: 'soil', probeDepthCm: depthCm, unit: 'C' } as const;
  return {
    series: daily
      ? {
          ...shape,
          daily: daily.map((day) => ({
            ...day,
            min: temperature(day.min),
            mean: temperature(day.mean),
            max: temperature(day.max),
            plusMinus: temperature(day.plusMinus),
          })),
        }
      : {
          ...shape,
          readings: Array.from(hours!.tempC, (tempC, hour) => ({
            at: instantText(hours!.startMs + hour * HOUR_MS, zone),
            value: temperature(tempC),
            basis: hours!.basis[hour]!,
          })),
        },
    understood: understood.map((report) => reportOnWire(report, rounding)),
    assumptions: [...assumptions],
    warnings: [...warnings],
  };
}
