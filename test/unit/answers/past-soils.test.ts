import { describe, expect, it } from 'vitest';
import { foldPast, PACKED_VERSION, unfoldPast } from '../../../src/answers/ahead/packed-past.js';
import { depthsWith, type PastSoil, pastAt, pastSoil, pastSoils } from '../../../src/answers/ahead/past-soil.js';
import { forecast } from '../../../src/answers/forecast/forecast.js';
import { defaultBed, type QuestionBed } from '../../../src/answers/question.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { addDays, findZone, type PlainDate, startOfDay } from '../../../src/basics/calendar.js';
import { crops } from '../../../src/germination/crops.js';
import { type ReadSeries, readSeries } from '../../../src/readings/read-series.js';
import { cropCalled } from '../germination/make.js';
import { airOfYears } from './make-air.js';

const zone = findZone('Europe/Berlin')!;
const site = { zone, latitude: 50, longitude: 10, annualRainMm: 700 };
const first = '2022-01-01' as PlainDate;
const air = airOfYears(first, 2, zone);
const lastDate = air.days.at(-1)!.date;

/** A probe's hours over the last months, with a hole. */
const probeAt = (depthCm: number | null, months: number): ReadSeries => {
  const fromMs = startOfDay(addDays(lastDate, -30 * months), zone);
  const readings = Array.from({ length: 30 * months * 24 }, (_, hour) => ({
    atMs: fromMs + hour * 3_600_000,
    value: 8 + 3 * Math.sin(hour / 300) + 2 * Math.sin((2 * Math.PI * (hour - 9)) / 24),
  })).filter((_, hour) => hour < 400 || hour > 900);
  const asked = {
    medium: 'soil',
    unit: 'C',
    probeDepthCm: depthCm,
    readings: readings.map(({ atMs, value }) => ({ at: new Date(atMs).toISOString(), value })),
  } as const;
  return readSeries(asked as never, zone, []);
};
const withForecast = (): ReadSeries[] => [
  { ...air, days: air.days.slice(0, -4), dayBasis: air.dayBasis.slice(0, -4) },
  { ...air, origin: 'forecast', days: air.days.slice(-4), dayBasis: [] },
];
const withHole = (): ReadSeries[] => {
  const isKept = (i: number): boolean => i < 300 || i > 360;
  return [{ ...air, days: air.days.filter((_, i) => isKept(i)), dayBasis: air.dayBasis.filter((_, i) => isKept(i)) }];
};

const beds: [string, ReadSeries[], Partial<QuestionBed>][] = [
  ['open ground under air alone', [air], {}],
  ['grass, with coming days', withForecast(), { cover: 'grass' }],
  ['a hole of two months in the air', withHole(), {}],
  ['a probe at 5 cm', [air, probeAt(5, 4)], {}],
  ['two probes, one beside the seed', [air, probeAt(10, 4), probeAt(null, 2)], {}],
  ['a pot', [air], { kind: 'pot', moisture: 'moist' }],
  ['a tray', [air], { kind: 'tray', moisture: 'moist' }],
];

/** To the bit; long arrays as bytes, which is a good deal faster to compare. */
function expectSame(got: PastSoil, wanted: PastSoil, name = ''): void {
  const short = ({ hourlyC, comingC, air, ...rest }: PastSoil) => [
    rest,
    air?.firstDate,
    hourlyC.length,
    comingC.length,
  ];
  const long = ({ hourlyC, comingC, air }: PastSoil) => [hourlyC, comingC, air?.minC ?? new Float64Array()];
  expect(short(got), name).toEqual(short(wanted));
  long(got).forEach((values, i) => {
    const other = long(wanted)[i]!;
    expect(Buffer.from(values.buffer).equals(Buffer.from(other.buffer)), `${name} ${i}`).toBe(true);
  });
}

describe('past soil of all depths from one run', () => {
  it.each(beds)('is what each depth has alone: %s', (_, series, make) => {
    const bedding = { site, bed: { ...defaultBed, ...make }, depthCm: 1.3 };
    const all = pastSoils(series, bedding, 0);
    for (const depthCm of all.depthsCm) {
      expectSame(pastAt(all, depthCm), pastSoil(series, { ...bedding, depthCm }, 0), `${depthCm} cm`);
    }
  });

  it('has the depth of every crop of the table', () => {
    for (const { id, sowingDepthCm } of crops.values()) {
      if (sowingDepthCm !== null) expect(depthsWith(1.3), id).toContain(sowingDepthCm);
    }
  });

  it('finds a depth at which no crop is sown alone', () => {
    const bedding = { site, bed: defaultBed, depthCm: 7 };
    const all = pastSoils([air], bedding, 0);
    expect(all.depthsCm).toEqual([7]);
    expectSame(pastAt(all, 7), pastSoil([air], bedding, 0));
    expect(depthsWith(7)).not.toEqual(depthsWith(1.3));
    expect(depthsWith(0.6)).toEqual(depthsWith(1.3));
  });
});

describe('past soil, packed', () => {
  const unpacked = (past: PastSoil): PastSoil => unfoldPast(foldPast(past))!;

  it.each(beds)('is the same to the bit when it is unpacked: %s', (_, series, make) => {
    const past = pastSoil(series, { site, bed: { ...defaultBed, ...make }, depthCm: 1.3 }, 0);
    expectSame(unpacked(past), past);
  });

  it('is the same where the air is no round number, as degrees Fahrenheit are in Celsius', () => {
    const daily = air.days.map(({ date, min, max }) => ({ date, min: 1.8 * min! + 32, max: 1.8 * max! + 32 }));
    const inFahrenheit = readSeries({ medium: 'air', unit: 'F', daily } as never, zone, []);
    const past = pastSoil([inFahrenheit], { site, bed: defaultBed, depthCm: 1.3 }, 0);
    expect(past.air!.minC.some((minC) => Math.round(minC * 100) / 100 !== minC)).toBe(true);
    expectSame(unpacked(past), past);
  });

  it('gives the same answers, letter by letter', () => {
    const crop = cropCalled('lettuce');
    const years = airOfYears(first, 3.2, zone);
    const lastDate = years.days.at(-1)!.date;
    const common = { site, bed: defaultBed, series: [years], understood: [], normals: null, crop, lot: null };
    const sowing = { date: addDays(lastDate, 100), time: '12:00', depthCm: null, seeds: 100 };
    const factors = { timeFactor: null, standFactor: null, learned: null, countDays: null, beyond: null };
    const criteria = { share: 0.8, shareIfHeld: 0.6, maxDays: 21, sureness: 0.8 };
    const window = { time: '12:00', timeFactor: null, from: lastDate, to: addDays(lastDate, 200), criteria };
    const answers = [pastSoil, (...asked: Parameters<typeof pastSoil>) => unpacked(pastSoil(...asked))].map((find) =>
      JSON.stringify([
        forecast({ ...common, ...factors, sowing, zoneFromStamps: false }, find),
        sowingWindows({ ...common, ...window, depthCm: 1.3, prefer: 'surest', judge: 'harvest' }, find),
      ]),
    );
    expect(answers[0]).toBe(answers[1]);
  });

  it('takes less than two bytes an hour', () => {
    const past = pastSoil([air], { site, bed: defaultBed, depthCm: 1.3 }, 0);
    expect(foldPast(past).length).toBeLessThan(2 * past.hourlyC.length);
  });

  it('is not taken for another version’s', () => {
    const past = pastSoil([air], { site, bed: defaultBed, depthCm: 1.3 }, 0);
    const folded = foldPast(past);
    folded[0] = PACKED_VERSION + 1;
    expect(unfoldPast(folded)).toBeNull();
  });
});
