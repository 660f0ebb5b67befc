import { z } from 'zod';
import { findDate } from '../basics/calendar.js';
import { celsiusFrom } from '../basics/units.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { airDayOf } from './air-day.js';
import { jsonAnswer } from './json-answer.js';
import type { SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';
import { unitNamed } from './unit-name.js';

const column = z.array(z.number().nullable()).optional();
const columns = z.object({
  daily: z.object({
    time: z.array(z.string()),
    temperature_2m_max: column,
    temperature_2m_min: column,
    temperature_2m_mean: column,
  }),
  daily_units: z.record(z.string(), z.string()),
});

const COLUMNS = { min: 'temperature_2m_min', mean: 'temperature_2m_mean', max: 'temperature_2m_max' } as const;

/**
 * Days as columns of equal length: dates under `daily.time`, air temperatures at two metres beside it, units under
 * `daily_units`; null where nothing is known. The days are those of the zone that the address asks for.
 *
 * The form is that of Open-Meteo's archive and forecast (open-meteo.com/en/docs/historical-weather-api and
 * open-meteo.com/en/docs, read 2026-11-30). Nothing in it tells past days from coming ones, so each day is given as both:
 * what is over counts as past, the rest as to come.
 */
export function readDailyColumnsJson(bytes: Uint8Array): SourceDays {
  const { daily, daily_units: units } = jsonAnswer(bytes, columns, 'columns');
  const inC = Object.entries(COLUMNS).flatMap(([statistic, name]) => {
    const values = daily[name];
    if (!values) return [];
    if (values.length !== daily.time.length) {
      throw new SourceError(sourceFact('source.not-form', { form: 'columns', at: `daily.${name}` }));
    }
    const unit = unitNamed(units[name] ?? '');
    if (!unit)
      throw new SourceError(sourceFact('source.unit', { value: name, unit: units[name]?.slice(0, 40) || null }));
    return [{ statistic, values: values.map((value) => (value === null ? null : celsiusFrom[unit](value))) }];
  });
  if (inC.length === 0) throw new SourceError(sourceFact('source.not-form', { form: 'columns', at: 'daily' }));
  const days = daily.time.flatMap((text, row) => {
    const date = findDate(text);
    if (!date) throw new SourceError(sourceFact('source.no-date', { text: text.slice(0, 20) }));
    return airDayOf(date, Object.fromEntries(inC.map(({ statistic, values }) => [statistic, values[row]]))) ?? [];
  });
  days.sort((a, b) => (a.date < b.date ? -1 : 1));
  return { measured: days, forecast: days };
}
