import { describe, expect, it } from 'vitest';
import { type PastSoil, pastSoil, yearsBefore } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../../src/answers/question.js';
import type { WindowQuestion } from '../../../src/answers/windows/judged-dates.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import {
  addDays,
  DAY_MS,
  daysBetween,
  findZone,
  HOUR_MS,
  instantAt,
  type PlainDate,
  startOfDay,
} from '../../../src/basics/calendar.js';
import type { Crop } from '../../../src/germination/crop.js';
import { cohortRun } from '../../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';
import { readSeries } from '../../../src/readings/read-series.js';
import { cropCalled, seedOf } from '../germination/make.js';

/** A zone whose clocks change, so that days of 23 and 25 hours lie among the dates. */
const zone = findZone('Atlantic/Azores')!;
const site = { zone, latitude: 44, longitude: -30, annualRainMm: 800 };
const FIRST = '2021-01-01' as PlainDate;
const TODAY = '2027-03-10' as PlainDate;

/** Invented air of six years, warmer by `warmerC`, and five coming days. */
function airSeries(warmerC: number) {
  const n = daysBetween(FIRST, TODAY);
  const day = (i: number) => {
    const mean =
      warmerC + 12 - 9 * Math.cos((2 * Math.PI * (i - 25)) / 365.25) + 4 * Math.sin(i / 4.3) + 2 * Math.sin(i / 17.9);
    return { date: addDays(FIRST, i), min: mean - 6, max: mean + 6 };
  };
  const measured = Array.from({ length: n }, (_, i) => day(i));
  const coming = Array.from({ length: 5 }, (_, i) => ({ date: addDays(TODAY, i), min: 9, max: 19 + i }));
  return [
    readSeries({ medium: 'air', unit: 'C', daily: measured }, zone, []),
    readSeries({ medium: 'air', unit: 'C', origin: 'forecast', daily: coming }, zone, []),
  ];
}

const questionOf = (crop: Crop, overrides: Partial<WindowQuestion>): WindowQuestion => ({
  crop,
  site,
  bed: defaultBed,
  depthCm: 1.3,
  time: '12:00',
  lot: null,
  timeFactor: null,
  series: airSeries(0),
  understood: [],
  from: TODAY,
  to: '2027-06-30' as PlainDate,
  criteria: { share: 0.8, shareIfHeld: 0.6, maxDays: crop.maxDays, sureness: 0.8 },
  prefer: 'earliest',
  judge: 'emergence',
  normals: null,
  ...overrides,
});

/** One date in one year, on its own: the hours it would have had, its seedlings counted, and frost looked for day by day. */
function isGood(past: PastSoil, question: WindowQuestion, date: PlainDate, back: number): boolean | null {
  const { crop, criteria, time, from } = question;
  const { share, shareIfHeld, maxDays } = criteria;
  const lastMs = past.startMs + past.hourlyC.length * HOUR_MS;
  const indexOf = (ms: number): number => Math.round((ms - past.startMs) / HOUR_MS);
  const pastC = (h: number): number => past.hourlyC[h] ?? NaN;
  const meanBefore = (h: number): number => {
    let sum = 0;
    for (let i = h - 24; i < h; i++) sum += pastC(i);
    return sum / 24;
  };
  // How far ahead of the last measured hour the first date begins; the year's own hours run on from there.
  const firstMs = startOfDay(from, zone);
  const ownFirstMs = startOfDay(yearsBefore(from, back), zone);
  const leadH = Math.round((firstMs - lastMs) / HOUR_MS);
  const oddK = meanBefore(past.hourlyC.length) - meanBefore(Math.max(24, indexOf(ownFirstMs) - leadH));
  const sowH = indexOf(instantAt(yearsBefore(date, back), time, zone));
  const weights = [1, 1, 0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];
  const hourlyC = Float64Array.from({ length: 24 * maxDays }, (_, i) => {
    const own = sowH + i;
    const ahead = leadH + own - indexOf(ownFirstMs);
    if (ahead < 0 || ahead >= 60 * 24) return pastC(own);
    const brought = pastC(own) + oddK * Math.exp(-(ahead + 12) / 24 / 8);
    const weight = ahead < past.comingC.length ? (weights[Math.floor(ahead / 24)] ?? 0) : 0;
    return weight > 0 ? weight * past.comingC[ahead]! + (1 - weight) * brought : brought;
  });
  const outcome = outcomeAt(cohortRun(seedOf(crop), hourlyC), 24 * maxDays, 100);
  if (hourlyC.some(Number.isNaN)) return null;
  const first = outcome.firstH;
  if (crop.frost === 'tender' || crop.frost === 'half-hardy') {
    const limitC = crop.frost === 'tender' ? 0 : -2;
    const mature = crop.frost === 'tender' && crop.maturity?.countedFrom === 'sowing' ? crop.maturity.fromDays : 0;
    const exposed = Math.max(30, mature);
    if (first !== null) {
      const { firstDate, minC } = past.air!;
      const ownDay = daysBetween(firstDate, yearsBefore(from, back));
      const upOn = ownDay + Math.floor((sowH - indexOf(ownFirstMs) + first) / 24);
      const todayDay = Math.round((lastMs - startOfDay(firstDate, zone)) / DAY_MS);
      let isFrozen = false;
      for (let day = upOn; day <= upOn + exposed; day++) {
        if (day >= todayDay) break;
        // The coming days stand in for the past year's where they fall on the same date.
        const real = daysBetween(firstDate, addDays(from, day - ownDay));
        const comes = real >= todayDay && real < minC.length && (weights[real - todayDay] ?? 0) > 0.5;
        if ((comes ? minC[real]! : minC[day]!) <= limitC) isFrozen = true;
      }
      if (isFrozen) return false;
      if (upOn + exposed >= todayDay) return null;
    }
  }
  return outcome.laboratoryPercent >= 100 * share - 1e-9 && outcome.ifHeldAreLostPercent >= 100 * shareIfHeld - 1e-9;
}

describe('sowing windows, date by date and year by year', () => {
  const cases: [string, WindowQuestion][] = [
    ['lettuce in bare ground, from today on', questionOf(cropCalled('lettuce'), {})],
    [
      'lettuce in a hot country, through its summer',
      questionOf(cropCalled('lettuce'), { series: airSeries(9), to: '2027-08-31' as PlainDate }),
    ],
    [
      'snap beans, which frost kills, in a raised bed',
      questionOf(cropCalled('snap-bean'), { bed: { ...defaultBed, kind: 'raised-bed' }, depthCm: 4 }),
    ],
    ['tomato sown in the evening', questionOf(cropCalled('tomato'), { time: '18:00', to: '2027-07-31' as PlainDate })],
    [
      'beet, half-hardy, in a shaded pot, dates far ahead',
      questionOf(cropCalled('beet'), {
        bed: { ...defaultBed, kind: 'pot', moisture: 'moist', shadePercent: 50 },
        from: '2027-07-01' as PlainDate,
        to: '2027-12-10' as PlainDate,
      }),
    ],
  ];

  it.each(cases)('are the same as all at once: %s', (_, question) => {
    const { from, to, criteria } = question;
    const found = sowingWindows(question);
    const past = pastSoil(question.series, question, startOfDay(from, zone));
    const nDates = daysBetween(from, to) + 1;
    const shares = Array.from({ length: nDates }, (_, day) => {
      const years = Array.from({ length: 8 }, (_, back) => isGood(past, question, addDays(from, day), back + 1));
      const known = years.filter((good) => good !== null);
      return known.length === 0 ? NaN : known.filter(Boolean).length / known.length;
    });
    // Nothing would be shown by dates that are all alike.
    expect(new Set(shares).size, String(shares)).toBeGreaterThan(3);
    const sureness = shares.map((_, day) => {
      const around = shares.slice(Math.max(0, day - 3), day + 4).filter((share) => !Number.isNaN(share));
      return around.length === 0 ? 0 : around.reduce((sum, share) => sum + share, 0) / around.length;
    });
    found.dates.forEach(({ date, sureness: told }, day) => {
      expect(told, date).toBeCloseTo(sureness[day]!, 9);
    });
    for (const window of found.windows) {
      expect(daysBetween(window.from, window.to)).toBeGreaterThanOrEqual(6);
      for (let day = daysBetween(from, window.from); day <= daysBetween(from, window.to); day++) {
        expect(sureness[day]!).toBeGreaterThanOrEqual(criteria.sureness - 1e-9);
      }
    }
    const sureDays = sureness.filter((one) => one >= criteria.sureness - 1e-9).length;
    const inWindows = found.windows.reduce((sum, window) => sum + daysBetween(window.from, window.to) + 1, 0);
    expect(inWindows).toBeLessThanOrEqual(sureDays);
  });
});
