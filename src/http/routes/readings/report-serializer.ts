import { bases, basisCode } from '../../../basics/series.js';
import type { ReportWire } from '../../../contract/readings.js';
import type { Day } from '../../../readings/daily/days.js';
import type { SeriesReport } from '../../../readings/report.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';

/** Serializes the report on a series. */
export function serializeReport(report: SeriesReport, { temperature, days: tenth }: Rounding): Unworded<ReportWire> {
  const { days, dayBasis, origin, probeDepthCm, min, mean, max, columns, dropped, doubtful, gaps, ...rest } = report;
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
    ...(doubtful ? { doubtful: [...doubtful] } : {}),
    gaps: gaps.map((gap) => ({ ...gap, hours: tenth(gap.hours) })),
    series: {
      medium: report.medium,
      ...depth,
      unit: 'C',
      ...(origin === 'forecast' ? { origin } : {}),
      daily: days.map((day, i) => serializeDay(day, tellingBasis(origin, dayBasis[i]), temperature)),
    },
  };
}

/** The provenance of a day, if it differs from its series'. */
const tellingBasis = (origin: SeriesReport['origin'], basis: number | undefined): number | undefined =>
  basis === basisCode(origin) ? undefined : basis;

function serializeDay(day: Day, basis: number | undefined, temperature: Rounding['temperature']) {
  return {
    date: day.date,
    ...(day.min === null ? {} : { min: temperature(day.min) }),
    ...(day.mean === null ? {} : { mean: temperature(day.mean) }),
    ...(day.max === null ? {} : { max: temperature(day.max) }),
    ...(basis === undefined ? {} : { basis: bases[basis]! }),
    ...(day.readings > 0 ? { readings: day.readings } : {}),
    complete: day.complete,
  };
}
