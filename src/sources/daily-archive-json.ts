import { z } from 'zod';
import { findDate } from '../basics/calendar.js';
import { celsiusFrom } from '../basics/units.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { airDayOf } from './air-day.js';
import { jsonAnswer } from './json-answer.js';
import type { SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';
import { unitNamed } from './unit-name.js';

const byDate = z.record(z.string(), z.number().nullable()).optional();
const unit = z.object({ units: z.string() }).optional();

const archive = z.object({
  properties: z.object({ parameter: z.object({ T2M: byDate, T2M_MAX: byDate, T2M_MIN: byDate }) }),
  header: z.object({ fill_value: z.number().optional() }).optional(),
  parameters: z.object({ T2M: unit, T2M_MAX: unit, T2M_MIN: unit }),
});

/** A missing value, unless the header names another. */
const FILL_VALUE = -999;
const COLUMNS = { min: 'T2M_MIN', mean: 'T2M', max: 'T2M_MAX' } as const;

/**
 * An agro-climate archive that serves daily values of a point as JSON: air temperature at two metres, its minimum, mean
 * and maximum, each by date `YYYYMMDD`; units under `parameters`, the fill value in `header` (NASA POWER, daily point
 * service). Its days, of local solar time, are assumed to be the place's own.
 */
export function readDailyArchiveJson(bytes: Uint8Array): SourceDays {
  const answer = jsonAnswer(bytes, archive, 'archive');
  const fill = answer.header?.fill_value ?? FILL_VALUE;
  const days = new Map<string, { min?: number; mean?: number; max?: number }>();
  for (const [statistic, column] of Object.entries(COLUMNS)) {
    const values = Object.entries(answer.properties.parameter[column] ?? {});
    if (values.length === 0) continue;
    const unit = answer.parameters[column]?.units ?? '';
    const name = unitNamed(unit);
    if (!name) {
      throw new SourceError(sourceFact('source.unit', { value: column, unit: unit || null }));
    }
    for (const [date, value] of values) {
      if (value === null || value === fill || value === FILL_VALUE) continue;
      days.set(date, { ...days.get(date), [statistic]: celsiusFrom[name](value) });
    }
  }
  const measured = [...days].map(([compact, values]) => {
    const date = findDate(compact.replace(/^(\d{4})(\d{2})(\d{2})$/, '$1-$2-$3'));
    if (!date) throw new SourceError(sourceFact('source.no-date', { text: compact.slice(0, 20) }));
    return airDayOf(date, values) ?? [];
  });
  return { measured: measured.flat().sort((a, b) => (a.date < b.date ? -1 : 1)), forecast: [] };
}
