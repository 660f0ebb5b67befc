import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/basics/numerics/normal-cdf.js';
import { probit } from '../../src/basics/numerics/probit.js';
import { celsiusDeltaFromFahrenheit } from '../../src/basics/units.js';
import { baseTempFit } from '../../src/germination/curve/base-temp-fit.js';
import { chartOf } from '../../src/germination/curve/chart.js';
import { bestPercent, germinationCurve, rateAt } from '../../src/germination/curve/curve.js';
import { thermoinhibitionThreshold } from '../../src/germination/curve/thermoinhibition-threshold.js';
import { COHORTS, cohortRun } from '../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../src/germination/run/outcome.js';
import { constantFor, cropCalled, hourly, type Part, rowsOf, seedOf } from '../unit/germination/make.js';
import { climateRunners } from './climate-runners.js';
import { lotRunners } from './lot-runners.js';
import type { Out } from './out.js';
import { readingsRunners } from './readings-runners.js';
import { seedbedRunners } from './seedbed-runners.js';
import { yardstickRunners } from './yardstick-runners.js';

/** How far an answer may lie from the table's. `abs` may differ from field to field; with `atLeast` only less is wrong. */
interface Tolerance {
  readonly abs?: number | Readonly<Record<string, number>>;
  readonly rel?: number;
  readonly atLeast?: true;
  readonly why: string;
}

interface Table {
  readonly function: string;
  readonly source: { readonly citation: string; readonly where: string; readonly readFrom: string };
  readonly kind: string;
  readonly units: Readonly<Record<string, string>>;
  readonly tolerance: Tolerance;
  readonly cases: readonly {
    readonly why: string;
    readonly in: never;
    readonly out: Out;
    readonly tolerance?: Tolerance;
  }[];
}

interface OfCrop {
  readonly crop: string;
}
interface AtTemp extends OfCrop {
  readonly tempC: number;
}
type OwnRows = readonly (readonly [number, number, number?])[];

const fahrenheit = (tempC: number): number => (tempC * 9) / 5 + 32;
const curveOf = (id: string) => seedOf(cropCalled(id)).curve;

const runners: Record<string, (given: never) => Out> = {
  'basics/normal-cdf': ({ z }: { z: number }) => normalCdf(z),
  'basics/probit': ({ p }: { p: number }) => probit(p),
  'basics/units celsiusDeltaFromFahrenheit': ({ deltaF }: { deltaF: number }) => celsiusDeltaFromFahrenheit(deltaF),

  ...readingsRunners,
  ...seedbedRunners,
  ...climateRunners,
  ...lotRunners,
  ...yardstickRunners,

  'germination/crops rows: days': ({ crop }: OfCrop) =>
    cropCalled(crop).rows.map((row) => row.days ?? (row.tested ? 'none' : 'not timed')),
  'germination/crops rows: percent': ({ crop, temperaturesC }: OfCrop & { temperaturesC: readonly number[] }) =>
    temperaturesC.map(
      (tempC) => cropCalled(crop).rows.find((row) => row.temperatureC === tempC)!.percent ?? 'not counted',
    ),
  'germination/crops soil limits': ({ crop }: OfCrop) => {
    const soil = cropCalled(crop).soil!;
    return {
      minimumF: fahrenheit(soil.minimumC),
      optimumFromF: fahrenheit(soil.optimumFromC),
      optimumToF: fahrenheit(soil.optimumToC),
      maximumF: fahrenheit(soil.maximumC),
    };
  },
  'germination/crops storage years': ({ crop }: OfCrop) => cropCalled(crop).storageYears,

  'germination/base-temp-fit': ({ crop }: OfCrop) => ({ ...baseTempFit(cropCalled(crop).rows)! }),
  'germination/base-temp-fit: the line': ({ crop }: OfCrop) => {
    const { baseTempC, thermalTimeCd } = baseTempFit(cropCalled(crop).rows)!;
    return { baseTempC, thermalTimeCd };
  },
  'germination/hot-threshold': ({ crop }: OfCrop) => thermoinhibitionThreshold(cropCalled(crop).rows),
  'germination/curve rateAt': ({ crop, tempC }: AtTemp) => rateAt(curveOf(crop), tempC),
  'germination/chart days': ({ crop, tempC }: AtTemp) => chartOf(cropCalled(crop))(tempC).days,
  'germination/chart percent': ({ crop, tempC }: AtTemp) => chartOf(cropCalled(crop))(tempC).percent,
  'germination/days in a slow bed': ({ crop, tempC }: AtTemp) =>
    chartOf(cropCalled(crop))(tempC).days! * cropCalled(crop).bedTimeFactor.to,
  'germination/rate over a day': ({ crop, meanC, swingC }: OfCrop & { meanC: number; swingC: number }) => ({
    meanOfRates:
      hourly({ hours: 24, meanC, swingC }).reduce((sum, tempC) => sum + rateAt(curveOf(crop), tempC), 0) / 24,
    rateAtMean: rateAt(curveOf(crop), meanC),
  }),

  'germination/own rows': ({ rows, tempC }: { rows: OwnRows; tempC: number }) => {
    const own = rowsOf(rows);
    const { baseTempC, thermalTimeCd } = baseTempFit(own)!;
    return { days: 1 / rateAt(germinationCurve(own, null), tempC), baseTempC, thermalTimeCd };
  },
  'germination/days to a percent of viable seed': (given: {
    rows: OwnRows;
    sigmaLog10: number;
    tempC: number;
    percentOfViable: number;
  }) => {
    const curve = germinationCurve(rowsOf(given.rows), null);
    const seed = { curve, hotThresholdC: 100, chillingSensitive: false, sigmaLog10: given.sigmaLog10, timeFactor: 1 };
    const run = cohortRun(seed, constantFor(1 / rateAt(curve, given.tempC), given.tempC));
    const upAtH = run.upAtH[(given.percentOfViable * COHORTS) / 100 - 1]!;
    return upAtH === Infinity ? null : upAtH / 24;
  },

  'germination/cohorts and outcome': (
    given: OfCrop & { hourly: readonly Part[]; countDays: number; sigmaLog10: number },
  ) => {
    const crop = cropCalled(given.crop);
    const run = cohortRun(seedOf(crop, { sigmaLog10: given.sigmaLog10 }), hourly(...given.hourly));
    const outcome = outcomeAt(run, 24 * given.countDays, bestPercent(crop.rows));
    return {
      firstDays: outcome.firstH! / 24,
      halfDays: outcome.halfH! / 24,
      mostDays: outcome.mostH! / 24,
      laboratoryPercent: outcome.laboratoryPercent,
      ifHeldAreLostPercent: outcome.ifHeldAreLostPercent,
    };
  },
  'germination/constant sowing: half': ({ crop, tempC }: AtTemp) => constantSowing(crop, tempC).halfH! / 24,
  'germination/constant sowing: percent of viable': ({ crop, tempC }: AtTemp) =>
    constantSowing(crop, tempC).laboratoryPercent,
};

function constantSowing(id: string, tempC: number) {
  const seed = seedOf(cropCalled(id));
  const hourlyC = constantFor(1 / rateAt(seed.curve, tempC), tempC);
  return outcomeAt(cohortRun(seed, hourlyC), hourlyC.length, 100);
}

/** Everything in which an answer differs from the table's by more than it may. */
function faults(expected: Out, actual: Out, tolerance: Tolerance, field = ''): string[] {
  if (typeof expected === 'number') {
    if (typeof actual !== 'number' || !Number.isFinite(actual)) return [`${field} is ${actual}, not ${expected}`];
    const abs = typeof tolerance.abs === 'object' ? tolerance.abs[field]! : (tolerance.abs ?? 0);
    const allowed = Math.max(abs, (tolerance.rel ?? 0) * Math.abs(expected));
    const within = tolerance.atLeast ? actual >= expected : Math.abs(actual - expected) <= allowed;
    return within ? [] : [`${field} is ${actual}, not ${expected}`];
  }
  if (expected === null || typeof expected === 'string')
    return actual === expected ? [] : [`${field} is ${actual}, not ${expected}`];
  if (typeof actual !== 'object' || actual === null) return [`${field} is ${actual}`];
  const [wanted, got] = [Object.keys(expected).sort(), Object.keys(actual).sort()];
  if (wanted.join() !== got.join()) return [`${field} has ${got}, not ${wanted}`];
  return Object.entries(expected).flatMap(([key, value]) =>
    faults(value, Object.entries(actual).find(([name]) => name === key)![1], tolerance, key),
  );
}

const folder = new URL('../../fixtures/golden/', import.meta.url);
const tables = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => ({ name, table: JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Table }));

describe('golden tables', () => {
  it.each(tables)('$name holds', ({ table }) => {
    const runner = runners[table.function];
    if (!runner) throw new Error(`no runner for ${table.function}`);
    expect(table.cases.length).toBeGreaterThan(0);
    const wrong = table.cases.flatMap(({ why, in: given, out, tolerance }) =>
      faults(out, runner(given), tolerance ?? table.tolerance).map(
        (fault) => `${JSON.stringify(given)} (${why}): ${fault}`,
      ),
    );
    expect(wrong).toEqual([]);
  });

  it.each(tables)('$name says where its values come from and why they may differ', ({ table }) => {
    expect(['published', 'derived', 'exact', 'other-program', 'self']).toContain(table.kind);
    for (const text of [table.source.citation, table.source.where, table.source.readFrom, table.tolerance.why]) {
      expect(text).toMatch(/\w{3}/);
    }
    for (const { why } of table.cases) expect(why).toMatch(/\w{3}/);
  });

  it.each(tables.filter(({ table }) => table.kind === 'self'))(
    '$name, our own values, says that it is no evidence',
    ({ table }) => {
      expect(table.source.readFrom).toContain('a guard, not evidence');
    },
  );

  it('every runner has a table', () => {
    expect(Object.keys(runners).filter((name) => !tables.some(({ table }) => table.function === name))).toEqual([]);
  });
});
