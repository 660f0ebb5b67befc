import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bases } from '../../src/basics/series.js';
import { cropCurve } from '../../src/plot/crop/crop-curve.js';
import { forecastPlot } from '../../src/plot/forecast-plot.js';
import { seasonStrip } from '../../src/plot/season-strip.js';
import { thinned } from '../../src/plot/thinned.js';
import { languages, readerOf } from '../../src/words/reader.js';
import { sayer } from '../../src/words/say.js';
import { outsideOf } from '../unit/plot/corners.js';
import { dateAfter } from '../unit/plot/make.js';
import { readXml } from '../unit/plot/read-xml.js';

const START = '2027-06-20';
const date = fc.integer({ min: -30, max: 420 }).map((day) => dateAfter(START, day));
const dates = fc.tuple(date, date).map(([a, b]) => (a < b ? { from: a, to: b } : { from: b, to: a }));
const degrees = fc.oneof(fc.double({ min: -60, max: 70, noNaN: true }), fc.constantFrom(0, -1e9, 1e9));
/** As a caller’s own numbers may be. */
const anyNumber = fc.oneof(
  { weight: 9, arbitrary: degrees },
  { weight: 1, arbitrary: fc.constantFrom(NaN, Infinity, -Infinity) },
);
const name = fc.oneof(
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.constantFrom('</svg>', '&', ']]>', 'ẞ'.repeat(200)),
);
const options = fc.record({
  say: fc.constantFrom(...languages.map((language) => sayer(readerOf(undefined, language)))),
  width: fc.integer({ min: 1, max: 3000 }),
  unit: fc.constantFrom('C' as const, 'F' as const),
  locale: fc.constantFrom('en-GB', 'en-US', 'de-DE', 'ja-JP', 'ar-EG'),
});

const milestone = fc.oneof(
  fc.record({
    date,
    range: fc.record({ from: date, to: fc.option(date) }),
    inBeds: dates,
  }),
  fc.record({ why: fc.constantFrom('not-by-count-day' as const, 'not-at-this-temperature' as const) }),
);
const spells = fc.option(
  fc.array(
    fc.tuple(dates, degrees, anyNumber).map(([span, peakC, thresholdC]) => ({ ...span, peakC, thresholdC })),
    { maxLength: 5 },
  ),
);
const forecast = fc
  .record({
    nDays: fc.integer({ min: 0, max: 380 }),
    emergence: fc.record({ first: milestone, half: milestone, most: milestone }),
    hotSpells: spells,
    coldSpells: spells,
    temps: fc.array(fc.tuple(anyNumber, anyNumber, anyNumber, fc.constantFrom(...bases), anyNumber), {
      minLength: 1,
      maxLength: 20,
    }),
    countDays: fc.integer({ min: 0, max: 366 }),
    skipped: fc.integer({ min: 2, max: 9 }),
  })
  .map(({ nDays, temps, countDays, skipped, ...rest }) => ({
    ...rest,
    sowing: { date: START, depthCm: 1.3 },
    countDays,
    stand: { by: dateAfter(START, countDays), field: { from: 20, to: 60 } },
    daily: Array.from({ length: nDays }, (_, day) => {
      const [min, mean, max, basis, emergedPercent] = temps[day % temps.length]!;
      return { date: dateAfter(START, day), min, mean, max, basis, emergedPercent };
    }).filter((_, day) => nDays < 5 || day % skipped > 0),
  }));
const hours = fc.option(
  fc.array(fc.tuple(anyNumber, fc.constantFrom(...bases)), { maxLength: 900 }).map((some) => ({
    atDay: some.map((_, hour) => (hour + 0.5) / 24),
    tempC: some.map(([tempC]) => tempC),
    basis: some.map(([, basis]) => basis),
  })),
);

const season = fc
  .record({
    nDates: fc.integer({ min: 0, max: 366 }),
    odds: fc.array(fc.option(fc.oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(-1, 2))), {
      minLength: 1,
      maxLength: 30,
    }),
    windows: fc.array(dates, { maxLength: 5 }),
    closed: fc.array(
      fc
        .tuple(
          dates,
          fc.constantFrom('too-cold' as const, 'too-hot' as const, 'too-slow' as const, 'frost-to-come' as const),
        )
        .map(([span, why]) => ({ ...span, why })),
      { maxLength: 12 },
    ),
    best: fc.option(fc.record({ date, why: name })),
    sureness: fc.double({ min: 0.01, max: 1, noNaN: true }),
    count: fc.nat(30),
  })
  .map(({ nDates, odds, sureness, count, ...rest }) => ({
    ...rest,
    dates: Array.from({ length: nDates }, (_, day) => ({
      date: dateAfter(START, day),
      sureness: odds[day % odds.length]!,
    })),
    criteria: { sureness },
    years: { count },
  }));

const crop = fc.record({
  id: fc.constantFrom('lettuce', 'own-rows'),
  name,
  latinName: fc.option(name),
  rows: fc.array(
    fc.record({
      temperatureC: anyNumber,
      tested: fc.boolean(),
      days: fc.option(fc.oneof(fc.double({ min: 0.01, max: 2000, noNaN: true }), anyNumber)),
      percent: fc.option(anyNumber),
    }),
    { maxLength: 20 },
  ),
  soil: fc.option(fc.record({ minimumC: degrees, optimumFromC: degrees, optimumToC: degrees, maximumC: degrees })),
  hotThresholdC: anyNumber,
});

const isInside = (svg: string): void => {
  expect(outsideOf(readXml(svg))).toEqual([]);
};

describe('any data', () => {
  it('gives a forecast’s picture of well-formed XML, all of it inside of its view box', () => {
    fc.assert(
      fc.property(
        forecast,
        hours,
        fc.record({ crop: name, bedName: fc.option(name), today: fc.option(date) }),
        options,
        (one, some, said, how) =>
          isInside(forecastPlot(one, { ...said, hours: some, goodC: { from: 4, to: 27 } }, how)),
      ),
      { numRuns: 300 },
    );
  });

  it('gives a season’s strip likewise', () => {
    fc.assert(
      fc.property(
        season,
        fc.record({ crop: name, bedName: fc.option(name), today: fc.option(date) }),
        options,
        (one, said, how) => isInside(seasonStrip(one, said, how)),
      ),
      { numRuns: 300 },
    );
  });

  it('gives a crop’s curve likewise', () => {
    fc.assert(
      fc.property(crop, options, (one, how) => isInside(cropCurve(one, how))),
      { numRuns: 300 },
    );
  });

  it('is thinned to four points a pixel at most, its ends and extremes kept', () => {
    const corners = fc
      .array(fc.tuple(fc.double({ min: 0, max: 50, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true })), {
        minLength: 1,
        maxLength: 500,
      })
      .map((some) => some.sort((a, b) => a[0] - b[0]));
    fc.assert(
      fc.property(corners, (some) => {
        const kept = thinned(some);
        const perColumn = new Map<number, number>();
        for (const [x] of kept) perColumn.set(Math.floor(x), (perColumn.get(Math.floor(x)) ?? 0) + 1);
        expect(Math.max(...perColumn.values())).toBeLessThanOrEqual(4);
        expect([kept[0], kept.at(-1)]).toEqual([some[0], some.at(-1)]);
        const ys = (points: readonly (readonly [number, number])[]) => points.map(([, y]) => y);
        expect(Math.max(...ys(kept))).toBe(Math.max(...ys(some)));
        expect(Math.min(...ys(kept))).toBe(Math.min(...ys(some)));
      }),
    );
  });
});
