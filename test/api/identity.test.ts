import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { daysTo, forecastOf, hourlySeries, quillmere, startApp } from './helper.js';

// Days and percent: Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997; read from the golden
// tables, which list where copies differ. At a constant temperature the service must say what the table says.

interface Golden<Out, In = unknown> {
  readonly cases: readonly { readonly in: { readonly crop: string } & In; readonly out: readonly Out[] }[];
}
const golden = <Table>(name: string): Table =>
  JSON.parse(readFileSync(new URL(`../../fixtures/golden/${name}.json`, import.meta.url), 'utf8'));
const daysTable = golden<Golden<number | string>>('handbook-days');
const percentTable = golden<Golden<number, { readonly temperaturesC: readonly number[] }>>('handbook-percent');
const printedTempsC = [0, 5, 10, 15, 20, 25, 30, 35, 40];

interface Cell {
  readonly crop: string;
  readonly tempC: number;
  readonly days: number;
  readonly printedPercent: number;
  readonly percent: number;
}

const cells: readonly Cell[] = percentTable.cases.flatMap(({ in: { crop, temperaturesC }, out }) => {
  const days = daysTable.cases.find((one) => one.in.crop === crop)?.out ?? [];
  const smoothed = singlePeaked(out);
  return temperaturesC.flatMap((tempC, i): Cell[] => {
    const timed = days[printedTempsC.indexOf(tempC)];
    const printedPercent = out[i]!;
    return typeof timed === 'number' && printedPercent > 0
      ? [{ crop, tempC, days: timed, printedPercent, percent: smoothed[i]! }]
      : [];
  });
});

/** Rising to the last best value and falling after it, by the min-max formula for isotonic means: no pooling in sight. */
function singlePeaked(values: readonly number[]): number[] {
  const peak = values.lastIndexOf(Math.max(...values));
  const falling = rising(values.slice(peak).reverse()).reverse();
  return [...rising(values.slice(0, peak + 1)), ...falling.slice(1)];
}

function rising(values: readonly number[]): number[] {
  const mean = (from: number, to: number): number =>
    values.slice(from, to + 1).reduce((sum, value) => sum + value, 0) / (to + 1 - from);
  return values.map((_, i) => {
    const lowestFrom = (from: number) => Math.min(...values.slice(i).map((_, ahead) => mean(from, i + ahead)));
    return Math.max(...values.slice(0, i + 1).map((_, from) => lowestFrom(from)));
  });
}

const app = await startApp();
const START = '2027-05-01';

const ask = (crop: string, temperatures: readonly unknown[]) =>
  forecastOf(
    app,
    {
      crop,
      where: { place: quillmere },
      sowing: { date: START, time: '00:00' },
      countDays: 366,
      beyond: 'repeat-last-week',
      temperatures,
    },
    'precision=full',
  );

const constantDays = (value: number, unit = 'C') => ({
  medium: 'soil',
  unit,
  daily: Array.from({ length: 30 }, (_, day) => ({
    date: `${START.slice(0, 8)}${String(day + 1).padStart(2, '0')}`,
    min: value,
    max: value,
  })),
});

const fahrenheit = (tempC: number): number => (tempC * 9) / 5 + 32;

/** Every eleventh cell: a dozen, from a dozen crops. */
const dozen = cells.filter((_, i) => i % 11 === 0);

describe('at a constant temperature the answer is the handbook’s', () => {
  it('has 130 cells with days and seedlings, of 24 crops', () => {
    expect(cells).toHaveLength(130);
    expect(new Set(cells.map(({ crop }) => crop)).size).toBe(24);
    expect(dozen).toHaveLength(12);
  });

  it('smooths only the cells that break a single peak', () => {
    const moved = cells
      .filter(({ percent, printedPercent }) => Math.abs(percent - printedPercent) > 1e-9)
      .map(({ crop, tempC, percent }) => [crop, tempC, Number(percent.toFixed(2))]);
    expect(moved).toEqual([
      ['snap-bean', 15, 93.5],
      ['snap-bean', 20, 93.5],
      ['celery', 5, 60.67],
      ['celery', 10, 60.67],
      ['celery', 15, 60.67],
      ['parsnip', 5, 83],
      ['parsnip', 10, 83],
      ['pea', 10, 93.33],
      ['pea', 15, 93.33],
      ['pea', 20, 93.33],
      ['radish', 15, 96],
      ['radish', 20, 96],
      ['spinach', 25, 30],
      ['spinach', 30, 30],
      ['watermelon', 20, 92],
      ['watermelon', 25, 92],
    ]);
  });

  it.each(cells)(
    '$crop at $tempC °C comes up half in $days days, $percent of 100',
    async ({ crop, tempC, days, percent }) => {
      const { emergence, stand } = await ask(crop, [constantDays(tempC)]);
      expect(Math.abs(daysTo(emergence.half) / days - 1)).toBeLessThan(0.02);
      expect(Math.abs(stand.laboratory - percent)).toBeLessThan(1);
    },
  );

  it.each(dozen)(
    '$crop at $tempC °C says the same in °F, in K and from readings',
    async ({ crop, tempC, days, percent }) => {
      const said = await ask(crop, [constantDays(tempC)]);
      const others = [
        constantDays(fahrenheit(tempC), 'F'),
        constantDays(tempC + 273.15, 'K'),
        hourlySeries(
          Array.from({ length: 30 * 24 + 1 }, () => tempC),
          { start: `${START}T00:00` },
        ),
      ];
      for (const series of others) {
        const { emergence, stand } = await ask(crop, [series]);
        expect(daysTo(emergence.half)).toBeCloseTo(daysTo(said.emergence.half), 6);
        expect(Math.abs(daysTo(emergence.half) / days - 1)).toBeLessThan(0.02);
        expect(stand.laboratory).toBe(said.stand.laboratory);
        expect(Math.abs(stand.laboratory - percent)).toBeLessThan(1);
      }
    },
  );
});

describe('where the handbook says that none came', () => {
  it('lettuce at 35 °C does not come up at this temperature', async () => {
    const { emergence, stand, chart } = await ask('lettuce', [constantDays(35)]);
    expect(emergence).toEqual({
      first: { why: 'not-at-this-temperature' },
      half: { why: 'not-at-this-temperature' },
      most: { why: 'not-at-this-temperature' },
    });
    expect(stand.laboratory).toBe(0);
    expect(chart).toEqual({ meanC: 35, days: null, percent: 0 });
  });

  it('asparagus at 40 °C gives no seedling, though roots were timed there', async () => {
    const { emergence, stand } = await ask('asparagus', [constantDays(40)]);
    expect(emergence.half).toEqual({ why: 'not-at-this-temperature' });
    expect(stand.laboratory).toBe(0);
  });
});
