import { describe, expect, test } from 'vitest';
import type { PlanAnswer } from '../../../src/contract/plans.js';
import type { SowingAnswer } from '../../../src/contract/sowings.js';
import type { Found } from '../../../src/page/growing/growing-found.js';
import { thingsToDo, thisWeek, toDoSaid } from '../../../src/page/growing/growing-to-do.js';
import type { Inventory } from '../../../src/page/shell/inventory.js';
import { english } from './readers.js';

const reader = english;
/** At Quillmere it is still 3 August: its zone is two hours behind. */
const shelf = {
  crops: [
    { id: 'carrot', name: 'Carrot' },
    { id: 'onion', name: 'Onion' },
  ],
  beds: [{ id: 'north', name: 'North bed', place: 'quillmere' }],
  places: [{ id: 'quillmere', timeZone: 'Etc/GMT+2' }],
  nowMs: Date.parse('2027-08-04T01:00:00Z'),
} as unknown as Inventory;

type Task = SowingAnswer['toDo'][number];
const sowing = (crop: string, date: string, toDo: readonly Task[]): Found['sowings'][number] => {
  const kept = { id: `${crop}-row`, bed: 'north', crop, date, seeds: 200, method: 'direct' } as const;
  return { kept, got: { value: { ...kept, toDo } as unknown as SowingAnswer } };
};
const task = (name: Task['task'], from: string, to = from): Task => ({ task: name, from, to, text: `${name}.` });
const planned = (date: string, more: object = {}) => ({
  ...{ date, seeds: 80, method: 'direct', shaded: false, sown: false },
  ...more,
});

const found = (sowings: Found['sowings'], planSowings: readonly object[] = []): Found => {
  const kept = { id: 'plan', revision: 1, bed: 'north', crop: 'carrot', harvest: { from: '', to: '', perWeek: 1 } };
  const got = { value: { ...kept, sowings: planSowings } as unknown as PlanAnswer };
  return { shelf, sowings, otherSowings: [], plans: [{ kept, got }], otherPlans: [], thermometers: new Map() };
};

const told = (of: Found) => thingsToDo(of, reader).map(({ date, of: name, task: what }) => `${date} ${name}: ${what}`);

describe('what there is to do', () => {
  test('of all sowings stands by date, today’s the most pressing first; what has begun is today’s', () => {
    const two = [
      sowing('onion', '2027-07-17', [
        task('count', '2027-08-07'),
        task('mind-heat', '2027-08-03', '2027-08-05'),
        task('keep-moist', '2027-07-17', '2027-08-20'),
      ]),
      sowing('carrot', '2027-06-10', [task('sow-again', '2027-08-01', '2027-08-30'), task('count', '2027-08-03')]),
    ];
    expect(told(found(two))).toEqual([
      '2027-08-03 Carrot, sown 10 June: sow-again',
      '2027-08-03 Carrot, sown 10 June: count',
      '2027-08-03 Onion, sown 17 July: mind-heat',
      '2027-08-03 Onion, sown 17 July: keep-moist',
      '2027-08-07 Onion, sown 17 July: count',
    ]);
  });

  test('is to sow, where a plan says so within two weeks and it has not been done', () => {
    const sowings = [
      planned('2027-08-01'),
      planned('2027-08-03', { sown: true }),
      planned('2027-08-03', { method: 'indoors' }),
      planned('2027-08-17', { shaded: true }),
      planned('2027-08-18'),
    ];
    expect(thingsToDo(found([], sowings), reader).map(({ date, text }) => `${date} ${text}`)).toEqual([
      '2027-08-03 Sow 80 seeds in trays, as planned.',
      '2027-08-17 Sow 80 seeds in the bed, in shade, as planned.',
    ]);
  });

  test('in the week after is folded away', () => {
    const all = thingsToDo(
      found([sowing('carrot', '2027-08-01', [task('count', '2027-08-09'), task('thin', '2027-08-10')])]),
      reader,
    );
    const [week, next] = (thisWeek(all, reader, 1) || { markup: '' }).markup.split('<details');
    expect(week).toContain('count.');
    expect(week).not.toContain('thin.');
    expect(next).toContain('thin.');
  });

  test.each([
    [[], 'Nothing is to be done this week.'],
    [['2027-08-03'], '1 thing to do today.'],
    [['2027-08-03', '2027-08-03', '2027-08-09'], '2 things to do today, 1 later this week.'],
    [['2027-08-04'], 'Nothing is to be done today, 1 later this week.'],
    [['2027-08-10'], 'Nothing is to be done this week.'],
  ])('on %j is summed up: %s', (dates, sentence) => {
    const tasks = dates.map((date) => task('count', date));
    expect(toDoSaid(thingsToDo(found([sowing('carrot', '2027-08-01', tasks)]), reader), reader)).toBe(sentence);
  });

  test('of a sowing of another year says which year', () => {
    expect(told(found([sowing('carrot', '2026-09-10', [task('harvest', '2027-08-03')])]))).toEqual([
      '2027-08-03 Carrot, sown 10 September 2026: harvest',
    ]);
  });
});
