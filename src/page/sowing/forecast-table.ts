import type { ForecastAnswer } from '../../contract/forecast.js';
import { inUnit } from '../../plot/degrees.js';
import type { PageReader } from '../shell/words.js';

/** The forecast's days as CSV, in the reader's degrees; the service accepts it as a thermometer's file. */
export function forecastTable({ daily }: ForecastAnswer, { degrees }: PageReader): string {
  const temp = (tempC: number): number => Math.round(inUnit(tempC, degrees) * 10) / 10;
  const rows = daily.map(({ date, min, mean, max, basis, emergedPercent, hotHours }) =>
    [date, temp(min), temp(mean), temp(max), basis, emergedPercent, hotHours].join(','),
  );
  const unit = `soil (${degrees})`;
  return [`date,min ${unit},mean ${unit},max ${unit},basis,up in the laboratory (%),hot hours`, ...rows, ''].join(
    '\r\n',
  );
}
