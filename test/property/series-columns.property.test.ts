import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, findZone, type PlainDate } from '../../src/basics/calendar.js';
import type { ReadSeries } from '../../src/readings/read-series.js';
import { columnsOf, digestOfSeries, seriesOf, withWarnings } from '../../src/worker/series-columns.js';

fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20_270_503) });
const numRuns = Number(process.env.PROPERTY_RUNS ?? 100);

const zone = findZone('Etc/GMT+2')!;
const anyC = fc.double({ min: -60, max: 75, noNaN: true });
const anyCode = fc.integer({ min: 0, max: 7 });
const maybe = fc.option(anyC, { nil: null });
const anyDay = fc.record({
  min: maybe,
  mean: maybe,
  max: maybe,
  readings: fc.nat(1440),
  complete: fc.boolean(),
});

const anySeries: fc.Arbitrary<ReadSeries> = fc
  .record({
    medium: fc.constantFrom('soil' as const, 'air' as const),
    probeDepthCm: fc.option(fc.double({ min: 0, max: 100, noNaN: true }), { nil: null }),
    origin: fc.constantFrom('measured' as const, 'forecast' as const),
    unit: fc.constantFrom('C' as const, 'F' as const),
    first: fc.integer({ min: 0, max: 90_000 }),
    days: fc.array(anyDay, { maxLength: 40 }),
    dayBasis: fc.array(anyCode, { maxLength: 40 }),
    dayPlusMinusK: fc.array(maybe, { maxLength: 40 }),
    usualStepMs: fc.option(fc.nat(1e7), { nil: null }),
    meanC: maybe,
    readings: fc.option(fc.array(fc.tuple(anyC, anyCode), { maxLength: 40 }), { nil: null }),
  })
  .map(({ first, days, readings, ...rest }) => ({
    ...rest,
    zone,
    days: days.map((day, i) => ({ date: addDays('1900-01-01' as PlainDate, first + i), ...day })),
    readings: readings && {
      atMs: Float64Array.from(readings, (_, i) => 1e12 + 60_000 * i),
      valueC: Float64Array.from(readings, ([valueC]) => valueC),
      basis: Uint8Array.from(readings, ([, code]) => code),
    },
    warnings: [],
  }));

describe('a series as columns', () => {
  it('is the same series again on the other side, and has the same digest there', () => {
    fc.assert(
      fc.property(anySeries, (series) => {
        const columns = columnsOf(series);
        const sent = structuredClone({ ...columns, memory: null });
        const read = seriesOf({ ...sent, memory: columns.memory });
        expect(read).toEqual(series);
        expect(columnsOf({ ...read }).digest).toBe(columns.digest);
      }),
      { numRuns },
    );
  });

  it('has another digest where anything but its warnings differs', () => {
    fc.assert(
      fc.property(anySeries, fc.nat(39), (series, at) => {
        const others: ReadSeries[] = [
          { ...series, medium: series.medium === 'soil' ? 'air' : 'soil' },
          { ...series, dayBasis: [...series.dayBasis, 0] },
          ...series.days.slice(at, at + 1).flatMap((day) => [
            { ...series, days: series.days.with(at, { ...day, max: (day.max ?? 0) + 0.001 }) },
            { ...series, days: series.days.with(at, { ...day, complete: !day.complete }) },
          ]),
        ];
        for (const other of others) expect(digestOfSeries(other)).not.toBe(digestOfSeries(series));
        const warned = withWarnings(series, [{ code: 'doubtful', text: 'One reading is doubtful.' }]);
        expect(digestOfSeries(warned)).toBe(digestOfSeries(series));
        expect(digestOfSeries({ ...warned })).toBe(digestOfSeries(series));
        expect(columnsOf(warned).warnings).toEqual(warned.warnings);
      }),
      { numRuns },
    );
  });

  it('of the same object is made once', () => {
    const series = fc.sample(anySeries, 1)[0]!;
    expect(columnsOf(series)).toBe(columnsOf(series));
  });
});
