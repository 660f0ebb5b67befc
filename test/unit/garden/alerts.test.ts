import { describe, expect, test } from 'vitest';
import type { SpellAnswer } from '../../../src/answers/forecast/remedies/spell-answers.js';
import { addDays } from '../../../src/basics/calendar.js';
import { basisCode } from '../../../src/basics/series.js';
import { type Alert, alertsOf } from '../../../src/garden/alerts/alerts.js';
import type { KnownNow, WindowsNow } from '../../../src/garden/sowing/known-now.js';
import type { Triage } from '../../../src/garden/sowing/triage.js';
import { alertEvents, type SubscriptionFields } from '../../../src/garden/store/alert-store.js';
import { crops } from '../../../src/germination/crops.js';
import { customCrop } from '../../../src/germination/custom-crop.js';
import { date } from '../../storage/make.js';
import { sayPlainly } from '../words/say-plainly.js';
import { hotSpell, hoursWith, milestone, sowingNow } from './known.js';

const everything: SubscriptionFields = { url: 'https://shed.example/', events: alertEvents, beds: null, crops: null };

/** Somebody who is told what is new, look after look. */
function listener(subscription: Partial<SubscriptionFields> = {}) {
  const told = new Map<string, string>();
  const lookAt = (known: Partial<KnownNow>): Alert[] => {
    const alerts = alertsOf({ ...everything, ...subscription }, told, { sowings: [], windows: [], ...known });
    for (const { subject, before, mark } of alerts) {
      expect(told.get(subject) ?? null).toBe(before);
      if (mark === null) told.delete(subject);
      else told.set(subject, mark);
    }
    return alerts.filter(({ data }) => data !== null);
  };
  return {
    told,
    lookAt,
    /** The texts that tell what is new of one sowing. */
    hear: (known: Parameters<typeof sowingNow>[0]) =>
      lookAt({ sowings: [sowingNow(known)] }).map(({ data }) => sayPlainly(data!.text)),
  };
}

describe('a hot spell ahead', () => {
  const spells = (...hotSpells: readonly SpellAnswer[]) => ({ forecast: { hotSpells } });

  test('is told once, with its dates, its peak and what to heed', () => {
    const { lookAt, hear } = listener();
    const known = spells(hotSpell('2027-05-08', '2027-05-09', 'severe'));
    const [alert] = lookAt({ sowings: [sowingNow(known)] });
    expect(alert).toMatchObject({
      event: 'hot-spell',
      data: {
        bed: 'north',
        sowing: 'beans',
        crop: 'snap-bean',
        hotSpells: [
          { from: '2027-05-08', to: '2027-05-09', hours: 16, peakC: 33.33, thresholdC: 29.5, severity: 'severe' },
        ],
      },
    });
    expect(sayPlainly(alert!.data!.text)).toMatch(
      /^Heat lies ahead of the snap bean sown on 3 May 2027 in bed north: from 8 May 2027 to 9 May 2027 it gets up to 33\.3 °C/,
    );
    expect(sayPlainly(alert!.data!.text)).toContain('follow local watering rules');
    expect(hear(known)).toEqual([]);
  });

  test('is told again where its dates move by two days or it gets severe, also back to what they were', () => {
    const { hear } = listener();
    const first = spells(hotSpell('2027-05-08', '2027-05-09'));
    expect(hear(first)).toHaveLength(1);
    expect(hear(spells(hotSpell('2027-05-08', '2027-05-11')))).toHaveLength(1);
    expect(hear(spells(hotSpell('2027-05-08', '2027-05-11', 'severe')))).toHaveLength(1);
    expect(hear(first)).toHaveLength(1);
  });

  test('is not told again by each look that finds its hours a little to either side of midnight, or it milder', () => {
    const { hear } = listener();
    expect(hear(spells(hotSpell('2027-05-08', '2027-05-09', 'severe')))).toHaveLength(1);
    for (const [from, to, severity] of [
      ['2027-05-07', '2027-05-09', 'severe'],
      ['2027-05-08', '2027-05-10', 'mild'],
      ['2027-05-09', '2027-05-10', 'severe'],
      ['2027-05-08', '2027-05-09', 'severe'],
    ] as const) {
      expect(hear(spells(hotSpell(from, to, severity)))).toEqual([]);
    }
    // Small moves add up.
    expect(hear(spells(hotSpell('2027-05-10', '2027-05-11', 'severe')))).toHaveLength(1);
  });

  test('that has moved a little keeps what was told of it where another is new', () => {
    const { hear } = listener();
    const other = hotSpell('2027-05-20', '2027-05-21');
    hear(spells(hotSpell('2027-05-08', '2027-05-09')));
    expect(hear(spells(hotSpell('2027-05-09', '2027-05-10'), other))).toHaveLength(1);
    expect(hear(spells(hotSpell('2027-05-10', '2027-05-11'), other))).toHaveLength(1);
  });

  test('beside another one is told with it', () => {
    const { hear } = listener();
    hear(spells(hotSpell('2027-05-08', '2027-05-09')));
    const [text] = hear(spells(hotSpell('2027-05-08', '2027-05-09'), hotSpell('2027-05-12', '2027-05-13')));
    expect(text).toContain('from 12 May 2027');
    expect(text).toContain('In all 2 hot spells');
  });

  test('that is no longer expected, or over, is not told of', () => {
    const { hear, told } = listener({ events: ['hot-spell'] });
    const known = spells(hotSpell('2027-05-08', '2027-05-09'));
    hear(known);
    expect(hear(spells())).toEqual([]);
    expect(hear(known)).toEqual([]);
    expect(hear({ ...known, today: date('2027-05-10') })).toEqual([]);
    expect(told.size).toBe(0);
    expect(hear({ ...spells(hotSpell('2027-05-01', '2027-05-02')) })).toEqual([]);
  });

  test('is not told of by the mean of past years, and with others only as far as its hours are known', () => {
    const spell = hotSpell('2027-05-08', '2027-05-12');
    const look = (lastKnownDay: number) => {
      const hours = hoursWith([spell], (day) => (day <= lastKnownDay ? 'forecast' : 'past-years'));
      return listener().lookAt({ sowings: [sowingNow({ forecast: { hotSpells: [spell], hours } })] });
    };
    expect(look(4)).toEqual([]);
    // 3 May and six days: of the spell 8 and 9 May are forecast, eight hot hours each.
    expect(look(6)[0]!.data).toMatchObject({ hotSpells: [{ from: '2027-05-08', to: '2027-05-09', hours: 16 }] });
  });

  test('of which five hours on each day are known is none', () => {
    const spell = hotSpell('2027-05-08', '2027-05-08');
    const hours = hoursWith([spell]);
    const hear = (nHours: number) => {
      const basis = hours.basis.map((basis, hour) => (hour < 5 * 24 + 9 + nHours ? basis : basisCode('drift')));
      return listener().hear({ forecast: { hotSpells: [spell], hours: { ...hours, basis } } });
    };
    expect(hear(5)).toEqual([]);
    expect(hear(6)).toHaveLength(1);
  });

  test('that each new day of the forecast shows more of is told once, and where it ends is no news', () => {
    const { hear } = listener();
    const spell = hotSpell('2027-05-08', '2027-05-25');
    const on = (day: number, until = '2027-05-25') => {
      const whole = { ...spell, to: date(until) };
      const hours = hoursWith([whole], (one) => (one <= day + 9 ? 'forecast' : 'past-years'));
      return hear({ today: addDays(date('2027-05-03'), day), forecast: { hotSpells: [whole], hours } });
    };
    expect([0, 2, 4, 6, 8, 10, 12, 14, 16].map((day) => on(day).length)).toEqual([1, 0, 0, 0, 0, 0, 0, 0, 0]);
    // Its end was known by then: that it goes on for days is news.
    expect(on(19, '2027-05-29')).toHaveLength(1);
  });

  test('stands as it was told where the temperatures cannot show one', () => {
    const { hear } = listener();
    const known = spells(hotSpell('2027-05-08', '2027-05-09'));
    hear(known);
    expect(hear({ forecast: { hotSpells: null } })).toEqual([]);
    expect(hear(known)).toEqual([]);
  });
});

describe('a shift of emergence', () => {
  const half = (on: string | null, today = '2027-05-03') => ({
    today: date(today),
    forecast: {
      emergence: {
        first: milestone('2027-05-12'),
        half: on === null ? ({ why: 'not-by-count-day' } as const) : milestone(on),
        most: milestone('2027-05-30'),
      },
    },
  });

  test('is told from two days on, set against what was last told; the first forecast is the mark', () => {
    const { hear } = listener();
    const moves = ['2027-05-14', '2027-05-15', '2027-05-13', '2027-05-16', '2027-05-17', '2027-05-18', '2027-05-12'];
    expect(moves.map((on) => hear(half(on)).length)).toEqual([0, 0, 0, 1, 0, 1, 1]);
  });

  test('says from when to when, and which way', () => {
    const { lookAt } = listener();
    const look = (on: string | null) => lookAt({ sowings: [sowingNow(half(on))] })[0]?.data;
    const textOf = (on: string | null) => sayPlainly(look(on)!.text);
    look('2027-05-14');
    expect(look('2027-05-17')).toMatchObject({
      half: '2027-05-17',
      before: '2027-05-14',
    });
    expect(textOf('2027-05-13')).toContain('4 days earlier');
    expect(textOf(null)).toContain('no longer expected');
    expect(look(null)).toBeUndefined();
    expect(look('2027-05-20')).toMatchObject({ half: '2027-05-20', before: null });
  });

  test('is not told of what is up by all that was ever said, nor where the grower has moved the sowing', () => {
    const { hear } = listener();
    hear(half('2027-05-14'));
    expect(hear(half('2027-05-17', '2027-06-01'))).toEqual([]);
    expect(hear(half('2027-05-19', '2027-05-18'))).toHaveLength(1);
    expect(hear({ ...half('2027-05-25'), sowing: { date: date('2027-05-10') } })).toEqual([]);
    expect(hear({ ...half('2027-05-27'), sowing: { date: date('2027-05-10') } })).toHaveLength(1);
  });
});

describe('frost ahead', () => {
  const nights = (...coming: readonly (readonly [on: string, minC: number])[]) => ({
    comingMinC: coming.map(([on, minC]) => ({ date: date(on), minC })),
  });

  test('is told while seedlings are up, or may be up by then, night by night', () => {
    const { hear } = listener();
    // The first may be up from the 10th on.
    expect(hear(nights(['2027-05-09', -3]))).toEqual([]);
    expect(hear(nights(['2027-05-09', -3], ['2027-05-10', -0.04]))[0]).toContain(
      'on 10 May 2027 the air is forecast to fall to 0 °C',
    );
    expect(hear(nights(['2027-05-10', -2]))).toEqual([]);
    const [text] = hear(nights(['2027-05-10', -2], ['2027-05-11', -1]));
    expect(text).toContain('on 11 May 2027');
    expect(text).toContain('2 nights in all');
    expect(hear(nights())).toEqual([]);
    expect(hear(nights(['2027-05-11', -1]))).toEqual([]);
  });

  test('counts from 0 °C for tender crops, from -2 °C for half-hardy ones, and not for hardy ones', () => {
    const heard = (crop: string, minC: number) =>
      listener().hear({ crop: crops.get(crop)!, ...nights(['2027-05-15', minC]) }).length;
    // As the crops' classes say: snap-bean tender, lettuce half-hardy, cabbage hardy.
    expect(['snap-bean', 'lettuce', 'cabbage'].map((crop) => crops.get(crop)!.frost)).toEqual([
      'tender',
      'half-hardy',
      'hardy',
    ]);
    expect([heard('snap-bean', 0.1), heard('snap-bean', 0)]).toEqual([0, 1]);
    expect([heard('lettuce', -1.9), heard('lettuce', -2)]).toEqual([0, 1]);
    expect(heard('cabbage', -9)).toBe(0);
    const own = customCrop({ rows: [10, 20].map((temperatureC) => ({ temperatureC, days: 5, percent: 80 })) });
    expect(listener().hear({ crop: own, ...nights(['2027-05-15', -9]) })).toEqual([]);
  });

  test('counts over what was planted out of trays, for a month', () => {
    const heard = (night: string) =>
      listener().hear({
        ...nights([night, -1]),
        crop: crops.get('tomato')!,
        sowing: { method: 'indoors' },
        plantOut: date('2027-05-20'),
      }).length;
    expect(['2027-05-19', '2027-05-20', '2027-06-19', '2027-06-20'].map(heard)).toEqual([0, 1, 1, 0]);
  });

  test('does not count indoors, where nothing comes up, or once half-hardy seedlings are a month old', () => {
    const cold = nights(['2027-06-20', -5]);
    expect(listener().hear({ ...cold, sowing: { method: 'indoors' } })).toEqual([]);
    const none = { why: 'not-at-this-temperature' } as const;
    expect(listener().hear({ ...cold, forecast: { emergence: { first: none, half: none, most: none } } })).toEqual([]);
    const lettuce = { crop: crops.get('lettuce')! };
    expect(listener().hear({ ...cold, ...lettuce })).toEqual([]);
    expect(listener().hear({ ...nights(['2027-06-11', -5]), ...lettuce })).toHaveLength(1);
    // Beans are tender until they are ripe.
    expect(listener().hear(cold)).toHaveLength(1);
  });
});

describe('a window that opens', () => {
  const lettuce = (today: string, ...windows: (readonly [string, string])[]): { windows: WindowsNow[] } => ({
    windows: [
      {
        bed: 'north',
        crop: crops.get('lettuce')!,
        today: date(today),
        comingMinC: [],
        firstUp: null,
        windows: windows.map(([from, to]) => ({ from: date(from), to: date(to) })),
      },
    ],
  });

  test('is told on the first day in it, and once, though it seems to begin anew each day and its end moves', () => {
    const { lookAt } = listener();
    expect(lookAt(lettuce('2027-03-30', ['2027-04-02', '2027-06-10']))).toEqual([]);
    const [alert] = lookAt(lettuce('2027-04-02', ['2027-04-02', '2027-06-10']));
    expect(alert).toMatchObject({
      event: 'window-open',
      data: { bed: 'north', crop: 'lettuce', window: { from: '2027-04-02', to: '2027-06-10' } },
    });
    expect(sayPlainly(alert!.data!.text)).toContain('until 10 June 2027 is a good time to sow lettuce in bed north');
    expect(lookAt(lettuce('2027-04-03', ['2027-04-03', '2027-06-12']))).toEqual([]);
    expect(lookAt(lettuce('2027-04-04', ['2027-04-06', '2027-06-12']))).toEqual([]);
    expect(lookAt(lettuce('2027-04-06', ['2027-04-06', '2027-06-09']))).toEqual([]);
    expect(lookAt(lettuce('2027-06-11', ['2027-08-01', '2027-08-20']))).toEqual([]);
    expect(lookAt(lettuce('2027-08-01', ['2027-08-01', '2027-08-20']))).toHaveLength(1);
    expect(lookAt(lettuce('2028-04-02', ['2028-04-02', '2028-06-10']))).toHaveLength(1);
  });
});

describe('a window on the eve of frost', () => {
  const opened = (crop: string, nights: readonly (readonly [on: string, minC: number])[], firstUp = '2027-05-10') => {
    const window = {
      bed: 'north',
      crop: crops.get(crop)!,
      today: date('2027-05-01'),
      comingMinC: nights.map(([on, minC]) => ({ date: date(on), minC })),
      firstUp: date(firstUp),
      windows: [{ from: date('2027-05-01'), to: date('2027-06-10') }],
    };
    return listener().lookAt({ windows: [window] }).length;
  };

  test('is not told of for a tender crop while any frost is forecast, and for others not where it kills the seedling', () => {
    expect(opened('snap-bean', [['2027-05-02', 0.1]])).toBe(1);
    expect(opened('snap-bean', [['2027-05-02', 0]])).toBe(0);
    // Leaf lettuce bears -6 °C at most, and is up on the 10th at the earliest.
    expect(opened('lettuce', [['2027-05-10', -5.9]])).toBe(1);
    expect(opened('lettuce', [['2027-05-10', -6]])).toBe(0);
    expect(opened('lettuce', [['2027-05-09', -6]])).toBe(1);
  });

  test('is told of once the frost is over', () => {
    const { lookAt } = listener();
    const window = {
      bed: 'north',
      crop: crops.get('snap-bean')!,
      today: date('2027-05-01'),
      comingMinC: [{ date: date('2027-05-03'), minC: -1 }],
      firstUp: null,
      windows: [{ from: date('2027-05-01'), to: date('2027-06-10') }],
    };
    expect(lookAt({ windows: [window] })).toEqual([]);
    const later = {
      ...window,
      today: date('2027-05-04'),
      windows: [{ from: date('2027-05-04'), to: date('2027-06-10') }],
    };
    expect(lookAt({ windows: [{ ...later, comingMinC: [] }] })).toHaveLength(1);
    // Frost that is forecast once it was told takes nothing back.
    expect(lookAt({ windows: [later] })).toEqual([]);
  });
});

describe('a row to sow again', () => {
  const triage = (what: 'do.sow-again' | 'do.wait'): Triage => ({
    do: what === 'do.wait' ? 'wait' : 'sow-again',
    text:
      what === 'do.wait'
        ? {
            code: what,
            params: {
              found: 'nothing',
              livingRows: 1,
              ofRows: 4,
              lookOn: date('2027-05-20'),
              again: 'no',
              againOn: null,
              moistUntilDate: null,
              isAlike: 'no',
              bareCounts: 2,
            },
          }
        : {
            code: what,
            params: {
              sureness: 'probably',
              lostRows: 3,
              ofRows: 4,
              from: null,
              by: date('2027-06-10'),
              moistUntilDate: date('2027-05-30'),
              isAlike: 'no',
            },
          },
    options: [],
    checkFor: [],
  });

  test('is told once, with how likely it is lost and when there is time', () => {
    const { lookAt, hear } = listener();
    expect(hear({ triage: null })).toEqual([]);
    expect(hear({ triage: triage('do.wait') })).toEqual([]);
    const [alert] = lookAt({ sowings: [sowingNow({ triage: triage('do.sow-again') })] });
    expect(alert).toMatchObject({ event: 'sow-again', data: { sowing: 'beans', from: null, by: '2027-06-10' } });
    expect(sayPlainly(alert!.data!.text)).toBe(
      'Snap bean sown on 3 May 2027 in bed north: probably lost (3 in 4). Sow again now; the last good day is 10 June 2027. Keep this row moist until 30 May 2027 all the same.',
    );
    expect(hear({ triage: triage('do.sow-again') })).toEqual([]);
    expect(hear({ triage: triage('do.wait') })).toEqual([]);
    expect(hear({ triage: triage('do.sow-again') })).toEqual([]);
    expect(hear({ forecast: null })).toEqual([]);
    expect(hear({ triage: triage('do.sow-again') })).toEqual([]);
    // Sown again under the same id.
    expect(hear({ triage: triage('do.sow-again'), sowing: { date: date('2027-05-20') } })).toHaveLength(1);
  });
});

describe('somebody is told', () => {
  const frosty = {
    comingMinC: [{ date: date('2027-05-15'), minC: -3 }],
    forecast: { hotSpells: [hotSpell('2027-05-08', '2027-05-09')] },
  };

  test('of the events, beds and crops that they want, and of no other', () => {
    const heard = (subscription: Partial<SubscriptionFields>) => listener(subscription).hear(frosty).length;
    expect(heard({})).toBe(2);
    expect(heard({ events: ['frost'] })).toBe(1);
    expect(heard({ beds: ['north'], crops: ['snap-bean', 'lettuce'] })).toBe(2);
    expect(heard({ beds: ['south'] })).toBe(0);
    expect(heard({ crops: ['lettuce'] })).toBe(0);
    const windows = [
      {
        bed: 'north',
        crop: crops.get('lettuce')!,
        today: date('2027-05-03'),
        comingMinC: [],
        firstUp: null,
        windows: [{ from: date('2027-05-01'), to: date('2027-05-30') }],
      },
    ];
    expect(listener({ crops: ['lettuce'] }).lookAt({ windows })).toHaveLength(1);
    expect(listener({ beds: ['south'] }).lookAt({ windows })).toHaveLength(0);
  });

  test('nothing where nothing is known today, and what was told stands', () => {
    const { lookAt, hear, told } = listener({ crops: ['lettuce', 'snap-bean'] });
    const window = {
      bed: 'north',
      crop: crops.get('lettuce')!,
      today: date('2027-05-03'),
      comingMinC: [],
      firstUp: null,
    };
    const open = { ...window, windows: [{ from: date('2027-05-01'), to: date('2027-05-30') }] };
    lookAt({ sowings: [sowingNow(frosty)], windows: [open] });
    const before = new Map(told);
    expect(before.size).toBe(4);
    expect(
      lookAt({ sowings: [sowingNow({ ...frosty, forecast: null })], windows: [{ ...window, windows: null }] }),
    ).toEqual([]);
    expect(told).toEqual(before);
    expect(hear(frosty)).toEqual([]);
  });

  test('of each sowing by itself; what is gone is forgotten', () => {
    const { lookAt, told } = listener();
    const two = ['beans', 'more-beans'].map((id) => sowingNow({ ...frosty, sowing: { id } }));
    expect(lookAt({ sowings: two })).toHaveLength(4);
    expect([...told.keys()].filter((subject) => subject.endsWith(' more-beans'))).toHaveLength(3);
    expect(lookAt({ sowings: two.slice(0, 1) })).toEqual([]);
    expect([...told.keys()].every((subject) => subject.endsWith(' beans'))).toBe(true);
    expect(lookAt({})).toEqual([]);
    expect(told.size).toBe(0);
  });
});
