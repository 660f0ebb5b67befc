import { describe, expect, it } from 'vitest';
import type { CalendarEvent } from '../../../src/garden/calendar/calendar-event.js';
import { calendarEvents } from '../../../src/garden/calendar/calendar-events.js';
import type { BedSeason } from '../../../src/garden/calendar/calendar-season.js';
import { sayPlainly } from '../words/say-plainly.js';
import { forecastOf, growing, on, plannedOf, planOf, seasonOf, sowingOf, spellOf } from './seasons.js';

const dates = ({ kind, from, to }: CalendarEvent): [string, string, string] => [kind, from, to];
const eventsOf = (season: Partial<BedSeason>): CalendarEvent[] => calendarEvents(seasonOf(season));
const datesOf = (season: Partial<BedSeason>) => eventsOf(season).map(dates);
const kindsOf = (season: Partial<BedSeason>): string[] => eventsOf(season).map(({ kind }) => kind);
const uidsOf = (season: Partial<BedSeason>): string[] => eventsOf(season).map(({ uid }) => uid);

const SOWN = on('2027-05-03');
const lettuce = growing({
  forecast: forecastOf(SOWN),
  harvest: { from: on('2027-06-30'), to: on('2027-07-20') },
  resowBy: on('2027-08-15'),
});
const tomato = growing({
  sowing: sowingOf({ id: 'tomato-1', crop: 'tomato', date: on('2027-03-20'), method: 'indoors', roomC: 20 }),
  indoors: { hardenOff: { from: on('2027-05-12'), to: on('2027-05-19') }, plantOut: on('2027-05-20') },
  harvest: { from: on('2027-07-20'), to: on('2027-08-20') },
});

describe("a bed's calendar", () => {
  it('tells of a sowing from sowing to last harvest, each on its days', () => {
    expect(datesOf({ sowings: [lettuce] })).toEqual([
      ['keep-moist', '2027-05-03', '2027-05-17'],
      ['sow', '2027-05-03', '2027-05-03'],
      ['look-for-seedlings', '2027-05-07', '2027-05-17'],
      ['thin', '2027-05-27', '2027-06-02'],
      ['feed', '2027-06-08', '2027-06-08'],
      ['first-harvest', '2027-06-30', '2027-06-30'],
      ['last-harvest', '2027-07-20', '2027-07-20'],
      ['sow-again', '2027-08-15', '2027-08-15'],
    ]);
  });

  it('tells of one started indoors when to harden it off and plant it out, and not to thin it', () => {
    expect(datesOf({ sowings: [tomato] })).toEqual([
      ['sow', '2027-03-20', '2027-03-20'],
      ['harden-off', '2027-05-12', '2027-05-19'],
      ['plant-out', '2027-05-20', '2027-05-20'],
      ['feed', '2027-06-10', '2027-06-10'],
      ['first-harvest', '2027-07-20', '2027-07-20'],
      ['last-harvest', '2027-08-20', '2027-08-20'],
    ]);
    expect(sayPlainly(eventsOf({ sowings: [tomato] })[0]!.summary)).toBe('Sow tomato indoors');
  });

  it('tells only that it is sown where nothing else is known', () => {
    expect(kindsOf({ sowings: [growing()] })).toEqual(['sow']);
  });

  it('looks for no seedlings where none come, and thins none where most do not', () => {
    const none = { why: 'not-at-this-temperature' } as const;
    const forecast = forecastOf(SOWN, undefined, { emergence: { first: none, half: none, most: none } });
    expect(kindsOf({ sowings: [growing({ forecast })] })).toEqual(['keep-moist', 'sow']);
    const some = forecastOf(SOWN);
    const few = { ...some, emergence: { ...some.emergence, most: { why: 'not-by-count-day' } as const } };
    expect(datesOf({ sowings: [growing({ forecast: few })] })).toContainEqual([
      'look-for-seedlings',
      '2027-05-07',
      '2027-05-24',
    ]);
    expect(kindsOf({ sowings: [growing({ forecast: few })] })).not.toContain('thin');
  });

  it('thins what is sown thickly, and feeds neither peas nor what is ready by then', () => {
    const kinds = (crop: string, harvest: string | null = null) =>
      kindsOf({
        sowings: [
          growing({
            sowing: sowingOf({ crop }),
            forecast: forecastOf(SOWN),
            harvest: harvest === null ? null : { from: on(harvest), to: on(harvest) },
          }),
        ],
      });
    expect(kinds('pea')).not.toContain('thin');
    expect(kinds('pea')).not.toContain('feed');
    expect(kinds('carrot')).toContain('thin');
    expect(kinds('spinach')).toContain('feed');
    expect(kinds('spinach', '2027-06-05')).not.toContain('feed');
  });

  it('warns of heat over seed in the bed, spell by spell, with what to do', () => {
    const hotSpells = [
      spellOf('2027-05-06', '2027-05-08', { severity: 'severe' }),
      spellOf('2027-05-11', '2027-05-11'),
    ];
    const events = eventsOf({ sowings: [growing({ forecast: forecastOf(SOWN, undefined, { hotSpells }) })] });
    const heat = events.filter(({ kind }) => kind === 'heat');
    expect(heat.map(dates)).toEqual([
      ['heat', '2027-05-06', '2027-05-08'],
      ['heat', '2027-05-11', '2027-05-11'],
    ]);
    expect(sayPlainly(heat[0]!.summary)).toBe('Severe heat over lettuce seed');
    expect(heat[0]!.description.map(sayPlainly)).toEqual([
      'Up to 33 °C at the seed; above 27 °C heat holds it.',
      expect.stringMatching(/^Shade the row by half/),
    ]);
    const means = forecastOf(SOWN, undefined, { hotSpells: null });
    expect(kindsOf({ sowings: [growing({ forecast: means })] })).not.toContain('heat');
  });

  it('warns of frost only while plants stand that it harms', () => {
    const comingMinC = [
      { date: on('2027-05-18'), minC: -1 },
      { date: on('2027-05-21'), minC: 1.4 },
      { date: on('2027-05-22'), minC: 6 },
      { date: on('2027-09-21'), minC: -3 },
    ];
    const frosts = (season: Partial<BedSeason>) =>
      datesOf({ comingMinC, ...season }).filter(([kind]) => kind === 'frost');
    expect(frosts({ sowings: [tomato] })).toEqual([['frost', '2027-05-21', '2027-05-21']]);
    // Half-hardy: its seedlings stand from 7 May on, and a night of 1.4 °C does them nothing.
    expect(frosts({ sowings: [lettuce] })).toEqual([['frost', '2027-05-18', '2027-05-18']]);
    expect(frosts({ sowings: [growing()] })).toEqual([]);
    expect(frosts({})).toEqual([]);
  });

  it('tells of the sowings that a plan asks for', () => {
    expect(datesOf({ plans: [planOf(plannedOf('2027-05-01'), plannedOf('2027-05-20'))] })).toEqual([
      ['sow', '2027-05-01', '2027-05-01'],
      ['look-for-seedlings', '2027-05-09', '2027-05-09'],
      ['sow', '2027-05-20', '2027-05-20'],
      ['look-for-seedlings', '2027-05-28', '2027-05-28'],
      ['first-harvest', '2027-06-30', '2027-06-30'],
      ['last-harvest', '2027-07-15', '2027-07-15'],
      ['first-harvest', '2027-07-19', '2027-07-19'],
      ['last-harvest', '2027-08-03', '2027-08-03'],
    ]);
  });

  it('tells of a planned sowing in trays when to plant it out, and of one known from many years when it may come up', () => {
    const half = { date: on('2027-04-09'), range: { from: on('2027-04-07'), to: on('2027-04-12') } };
    const indoors = { hardenOff: { from: on('2027-04-30'), to: on('2027-05-07') }, plantOut: on('2027-05-08') };
    const planned = plannedOf('2027-04-01', { method: 'indoors', half, indoors });
    expect(datesOf({ plans: [planOf(planned)] })).toEqual([
      ['sow', '2027-04-01', '2027-04-01'],
      ['look-for-seedlings', '2027-04-07', '2027-04-12'],
      ['harden-off', '2027-04-30', '2027-05-07'],
      ['plant-out', '2027-05-08', '2027-05-08'],
      ['feed', '2027-05-29', '2027-05-29'],
      ['first-harvest', '2027-05-31', '2027-05-31'],
      ['last-harvest', '2027-06-15', '2027-06-15'],
    ]);
  });

  it('is in the order of dates, whatever order it came in', () => {
    const events = eventsOf({ sowings: [lettuce, tomato], plans: [planOf(plannedOf('2027-04-01'))] });
    expect(events.map(({ from }) => from)).toEqual(events.map(({ from }) => from).toSorted());
    expect(eventsOf({ sowings: [tomato, lettuce], plans: [planOf(plannedOf('2027-04-01'))] })).toEqual(events);
  });
});

describe('the uid of an event', () => {
  it('stays while its dates move', () => {
    const forecast = (first: number, heat: string) =>
      forecastOf(SOWN, { first, half: first + 3, most: first + 7 }, { hotSpells: [spellOf(heat, '2027-05-16')] });
    const season = (first: number, heat: string, date: string): Partial<BedSeason> => ({
      sowings: [{ ...lettuce, forecast: forecast(first, heat) }, tomato],
      plans: [planOf(plannedOf(date), plannedOf('2027-06-11'))],
    });
    const [before, after] = [season(5, '2027-05-09', '2027-05-20'), season(9, '2027-05-12', '2027-05-27')];
    expect(uidsOf(after).toSorted()).toEqual(uidsOf(before).toSorted());
    expect(datesOf(after)).not.toEqual(datesOf(before));
  });

  it('is no other event’s, even of things whose ids run together', () => {
    const ids = ['a', 'a-b', 'b', '1', 'plan', 'sowing', 'bed'];
    const hotSpells = [spellOf('2027-05-06', '2027-05-08'), spellOf('2027-05-11', '2027-05-11')];
    const uids = uidsOf({
      sowings: ids.map((id) => ({
        ...lettuce,
        sowing: sowingOf({ id }),
        forecast: forecastOf(SOWN, undefined, { hotSpells }),
      })),
      plans: ids.map((id) => {
        const one = planOf(plannedOf('2027-05-20'), plannedOf('2027-06-11'));
        return { ...one, plan: { ...one.plan, id } };
      }),
      comingMinC: [
        { date: on('2027-05-18'), minC: -8 },
        { date: on('2027-05-19'), minC: -8 },
      ],
    });
    expect(new Set(uids).size).toBe(uids.length);
    for (const uid of uids) expect(uid).toMatch(/^[a-z0-9.-]+@germination-forecaster$/);
  });

  it('of a frost is that of its night: when one has passed, the next does not take its place', () => {
    const frosts = (...nights: string[]) =>
      uidsOf({ sowings: [tomato], comingMinC: nights.map((night) => ({ date: on(night), minC: -1 })) }).filter((uid) =>
        uid.startsWith('frost'),
      );
    expect(frosts('2027-06-02')).toEqual(frosts('2027-06-01', '2027-06-02').slice(1));
  });
});
