import { describe, expect, it } from 'vitest';
import { type Forecast, forecast } from '../../src/answers/forecast/forecast.js';
import { defaultBed } from '../../src/answers/question.js';
import { addDays, daysBetween, fixedZone, type PlainDate } from '../../src/basics/calendar.js';
import { type ReadSeries, readSeries } from '../../src/readings/read-series.js';
import { cropCalled } from '../unit/germination/make.js';
import { hasRecords, tableOf } from './records.js';
import { mean, table } from './statistics.js';
import { tell } from './tell.js';

/** A station's air around a sowing, moved by some kelvins. */
function airAround(station: string, date: PlainDate, moved: { minK: number; maxK: number }): ReadSeries {
  const [from, to] = [addDays(date, -500), addDays(date, 80)];
  const daily = tableOf(`stations/uscrn_${station}.csv`)
    .filter((row) => row.tmin_c !== '' && row.tmax_c !== '' && row.date! >= from && row.date! <= to)
    .map((row) => ({
      date: row.date as PlainDate,
      min: Number(row.tmin_c) + moved.minK,
      max: Number(row.tmax_c) + moved.maxK,
    }));
  return readSeries({ medium: 'air', unit: 'C', daily }, fixedZone(-360), []);
}

const AS_IS = { minK: 0, maxK: 0 };
const forecastOf = (
  crop: string,
  date: string,
  depthCm: number,
  station: string,
  latitude: number,
  moved = AS_IS,
): Forecast =>
  forecast({
    crop: cropCalled(crop),
    site: { zone: fixedZone(-360), latitude, longitude: -96, annualRainMm: null },
    zoneFromStamps: false,
    bed: defaultBed,
    sowing: { date: date as PlainDate, time: '12:00', depthCm, seeds: null },
    lot: null,
    timeFactor: null,
    standFactor: null,
    learned: null,
    countDays: 60,
    series: [airAround(station, date as PlainDate, moved)],
    understood: [],
    beyond: null,
    normals: null,
  });

const halfDays = ({ emergence }: Forecast): number => ('days' in emergence.half ? emergence.half.days : NaN);

// Fields of maize at Mead, Nebraska (AmeriFlux site tables, emergence as recorded), under the air of Manhattan, Kansas, moved to their
// latitude; and some 70 plantings of snap beans at Corvallis (Oregon Vegetable Digest, July 1969).
describe.runIf(hasRecords)('emergence counted in fields', () => {
  const mead = hasRecords
    ? tableOf('practice/field-emergence.csv').filter(({ place }) => place!.startsWith('Mead'))
    : [];

  it('of maize is foretold within about two days, and no field that stood full is given less than half a stand', () => {
    const rows = mead.map(({ sown, days_from: days }) => {
      const found = forecastOf('sweet-corn', sown!, 5, 'KS_Manhattan_6_SSW', 41.17, { minK: -2.3, maxK: -2 });
      const { half } = found.emergence;
      const range = 'range' in half ? half.range : null;
      const counted = addDays(sown as PlainDate, Number(days));
      return {
        sown: sown!,
        counted: Number(days),
        ours: halfDays(found),
        oursDays: 'date' in half ? daysBetween(sown as PlainDate, half.date) : NaN,
        holds: range !== null && range.from <= counted && range.to !== null && counted <= range.to,
        range: range === null ? '' : `${range.from.slice(5)}..${range.to?.slice(5)}`,
        stand: found.stand.ifHeldAreLost,
      };
    });
    // Fields are noted by the day.
    const errors = rows.map(({ oursDays, counted }) => Math.abs(oursDays - counted));
    const held = rows.filter(({ holds }) => holds).length / rows.length;
    tell(
      'field-emergence',
      `Maize at Mead: days from sowing to emergence. Mean size of the errors ${mean(errors).toFixed(2)} d; ${Math.round(100 * held)} % of the ranges held`,
      table(
        ['sown', 'counted', 'half', 'range', 'stand if held seed is lost'],
        rows.map((row) => [row.sown, String(row.counted), row.ours, row.range, row.stand]),
      ),
    );
    expect(rows.length).toBe(9);
    expect(mean(errors)).toBeLessThanOrEqual(2.1);
    expect(held).toBeGreaterThanOrEqual(0.8);
    for (const { sown, stand } of rows) expect(stand, sown).toBeGreaterThanOrEqual(50);
  });

  it.each([
    ['late April', '04-28', 12, 17],
    ['early July', '07-01', 5, 6],
  ])('of snap beans of %s is foretold within a factor of 1.35 of the days counted', (_, date, from, to) => {
    const factor = cropCalled('snap-bean').growth!.bedFactor;
    const years = Array.from({ length: 14 }, (_, i) => 2009 + i);
    const ours = mean(
      years.map(
        (year) => factor * halfDays(forecastOf('snap-bean', `${year}-${date}`, 3, 'OR_Corvallis_10_SSW', 44.42)),
      ),
    );
    console.log(`snap beans at Corvallis, ${date}: ${ours.toFixed(1)} days, counted ${from} to ${to}`);
    expect(ours / from).toBeGreaterThan(1 / 1.35);
    expect(ours / to).toBeLessThan(1.35);
  });
});
