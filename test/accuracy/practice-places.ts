import { type FindPast, type PastSoil, pastSoil } from '../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../src/answers/question.js';
import { usualCriteria } from '../../src/answers/windows/dates-in-years.js';
import type { WindowQuestion } from '../../src/answers/windows/judged-dates.js';
import { type SowingWindows, sowingWindows } from '../../src/answers/windows/sowing-windows.js';
import { fixedZone, type PlainDate } from '../../src/basics/calendar.js';
import { type ReadSeries, readSeries } from '../../src/readings/read-series.js';
import { cropCalled } from '../unit/germination/make.js';
import { tableOf } from './records.js';
import { stationPlaces } from './stations.js';

/** A place as the service keeps it: its air, and the soil that it makes of it. */
export interface PracticePlace {
  readonly station: string;
  readonly site: WindowQuestion['site'];
  readonly series: readonly ReadSeries[];
  readonly findPast: FindPast;
}

export function practicePlace(name: string): PracticePlace {
  const { latitude, longitude } = stationPlaces().find(({ station }) => station === name)!;
  const rows = tableOf(`stations/uscrn_${name}.csv`);
  const zone = fixedZone(60 * Math.round(longitude / 15));
  const daily = rows
    .filter((row) => row.tmin_c !== '' && row.tmax_c !== '')
    .map((row) => ({ date: row.date as PlainDate, min: Number(row.tmin_c), max: Number(row.tmax_c) }));
  const soils = new Map<string, PastSoil>();
  return {
    station: name,
    site: { zone, latitude, longitude, annualRainMm: null },
    series: [readSeries({ medium: 'air', unit: 'C', daily }, zone, [])],
    findPast: (series, bedding, phaseMs, shouldStop) => {
      const key = JSON.stringify([bedding.depthCm, bedding.bed]);
      const known = soils.get(key) ?? pastSoil(series, bedding, phaseMs, shouldStop);
      soils.set(key, known);
      return known;
    },
  };
}

/** When to sow a crop there in open ground that is kept moist, as the service answers on a day. */
export function windowsAt(
  { site, series, findPast }: PracticePlace,
  crop: string,
  changes: Partial<WindowQuestion> = {},
): SowingWindows {
  const asked = cropCalled(crop);
  const question: WindowQuestion = {
    crop: asked,
    site,
    bed: defaultBed,
    depthCm: asked.sowingDepthCm ?? 1.3,
    time: '12:00',
    lot: null,
    timeFactor: null,
    series,
    understood: [],
    from: '2024-01-01' as PlainDate,
    to: '2024-12-31' as PlainDate,
    criteria: { ...usualCriteria, maxDays: asked.maxDays },
    prefer: 'earliest',
    judge: 'harvest',
    normals: null,
    ...changes,
  };
  return sowingWindows(question, findPast);
}
