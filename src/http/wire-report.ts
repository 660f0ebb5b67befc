import type { Day } from '../readings/days.js';
import type { SeriesReport } from '../readings/report.js';
import type { Rounding } from './rounding.js';
import type { ReportWire } from './schemas/readings.js';

/** What was understood of a series, as the contract words it. */
export function reportOnWire(report: SeriesReport, { temperature, days: tenth }: Rounding): ReportWire {
  const { days, probeDepthCm, min, mean, max, columns, dropped, gaps, ...rest } = report;
  const orNull = (value: number | null): number | null => (value === null ? null : temperature(value));
  const depth = probeDepthCm === null ? {} : { probeDepthCm };
  return {
    ...rest,
    ...depth,
    ...(columns ? { columns: columns.map((column) => ({ ...column })) } : {}),
    min: orNull(min),
    mean: orNull(mean),
    max: orNull(max),
    dropped: [...dropped],
    gaps: gaps.map((gap) => ({ ...gap, hours: tenth(gap.hours) })),
    series: { medium: report.medium, ...depth, unit: 'C', daily: days.map((day) => dayOnWire(day, temperature)) },
  };
}

function dayOnWire(day: Day, temperature: Rounding['temperature']) {
  return {
    date: day.date,
    ...(day.min === null ? {} : { min: temperature(day.min) }),
    ...(day.mean === null ? {} : { mean: temperature(day.mean) }),
    ...(day.max === null ? {} : { max: temperature(day.max) }),
    ...(day.readings > 0 ? { readings: day.readings } : {}),
    complete: day.complete,
  };
}
