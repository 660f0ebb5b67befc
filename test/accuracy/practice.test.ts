import { describe, expect, it } from 'vitest';
import { daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { type PracticePlace, practicePlace, windowsAt } from './practice-places.js';
import { compared, type OurWindow, publishedSeasons, summed } from './published.js';
import { hasRecords } from './records.js';
import { table } from './statistics.js';
import { tell } from './tell.js';

const places = new Map<string, PracticePlace>();
function placeCalled(station: string): PracticePlace {
  const known = places.get(station) ?? practicePlace(station);
  places.set(station, known);
  return known;
}

/** Days of a common year, 0 is 1 January. */
const ofYear = (date: PlainDate): number => daysBetween('2023-01-01' as PlainDate, `2023${date.slice(4)}` as PlainDate);
const dayText = (day: number | null): string =>
  day === null ? '' : new Date(Date.UTC(2023, 0, 1 + day)).toISOString().slice(5, 10);
const spanText = ({ from, to, grade }: OurWindow & { readonly grade?: string }): string =>
  `${dayText(from)}..${dayText(to)}${grade === 'fair' ? 'f' : ''}`;

/** 29 February is no day of a common year; no window of a station begins or ends with it. */
const ours = (station: string, crop: string): (OurWindow & { readonly grade: string })[] =>
  windowsAt(placeCalled(station), crop).windows.map(({ from, to, grade }) => ({
    from: ofYear(from.replace('02-29', '02-28') as PlainDate),
    to: ofYear(to.replace('02-29', '02-28') as PlainDate),
    grade,
  }));

// Planting windows as extension services print them, of seven places: each list says which.
describe.runIf(hasRecords)('sowing windows beside published ones', () => {
  it('open and close about when practice does, and miss few seasons', () => {
    const seasons = compared(ours);
    expect(seasons.length).toBe(publishedSeasons().length);
    const first = summed(seasons.map(({ firstError }) => firstError));
    const last = summed(seasons.map(({ lastError }) => lastError));
    const missed = seasons.filter(({ isMissed }) => isMissed).length;
    tell(
      'practice-windows',
      `Published planting windows of seven places beside ours [days: ours less published]. First: median ${first.median}, mean size ${first.mae.toFixed(1)}, of ${first.n}; last: median ${last.median}, mean size ${last.mae.toFixed(1)}, of ${last.n}; missed ${missed} of ${seasons.length}. f: second best`,
      table(
        ['place', 'crop', 'season', 'published', 'ours', 'first', 'last'],
        seasons.map(({ season, ours: windows, firstError, lastError, isMissed }) => [
          season.station.slice(0, 13),
          season.crop,
          season.season,
          `${dayText(season.first)}..${dayText(season.last)}${season.byMonth ? ' (months)' : ''}`,
          isMissed ? `missed: ${windows.map(spanText).join(' ')}` : windows.map(spanText).join(' '),
          firstError === null ? '' : String(firstError),
          lastError === null ? '' : String(lastError),
        ]),
      ),
    );
    expect(Math.abs(first.median)).toBeLessThanOrEqual(3);
    expect(first.mae).toBeLessThanOrEqual(9);
    expect(Math.abs(last.median)).toBeLessThanOrEqual(5);
    expect(last.mae).toBeLessThanOrEqual(18);
    expect(missed).toBeLessThanOrEqual(2);
  });

  it('name a best date for beans in Champaign that is in May, and none in August', () => {
    const champaign = placeCalled('IL_Champaign_9_SW');
    const yearly = windowsAt(champaign, 'snap-bean');
    expect(yearly.best!.date.slice(5, 7)).toBe('05');
    const august = windowsAt(champaign, 'snap-bean', {
      from: '2024-08-10' as PlainDate,
      to: '2024-09-30' as PlainDate,
    });
    expect(august.best).toBeNull();
    expect(august.spans.flatMap(({ reasons }) => reasons.map(({ code }) => code))).toContain('too-late');
  });
});

const CROPS = ['beet', 'carrot', 'radish', 'turnip', 'cabbage', 'lettuce', 'spinach', 'parsley', 'pea', 'onion'].concat(
  ['snap-bean', 'sweet-corn', 'cucumber', 'muskmelon', 'tomato'],
);
const STATIONS = [
  'IL_Champaign_9_SW',
  'NY_Ithaca_13_E',
  'NH_Durham_2_N',
  'NC_Asheville_8_SSW',
  'KS_Manhattan_6_SSW',
  'GA_Newton_11_SW',
  'TX_Austin_33_NW',
  'CO_Nunn_7_NNE',
  'MN_Goodridge_12_NNW',
  'WI_Necedah_5_WNW',
];

describe.runIf(hasRecords)('the seasons of ten places and fifteen crops', () => {
  it('are told, for an adviser to read line by line, and no best date lies outside what is good or fair', () => {
    const rows = STATIONS.flatMap((station) =>
      CROPS.map((crop) => {
        const { windows, best, spans, dates } = windowsAt(placeCalled(station), crop);
        const worst = spans.filter(({ grade }) => grade === 'poor').map(({ reasons }) => reasons[0]!.code);
        expect(best === null, `${station} ${crop}`).toBe(spans.every(({ grade }) => grade === 'poor'));
        if (best) expect(dates.find(({ date }) => date === best.date)!.grade, `${station} ${crop}`).toBe(best.grade);
        const told = windows.map(
          ({ from, to, grade }) => `${from.slice(5)}..${to.slice(5)}${grade === 'fair' ? 'f' : ''}`,
        );
        const harvest = best && dates.find(({ date }) => date === best.date)!.harvest;
        return [
          station.slice(0, 12),
          crop,
          told.join(' ') || 'none',
          best ? `${best.date.slice(5)}${best.grade === 'fair' ? 'f' : ''}` : 'none',
          harvest ? `${harvest.from.slice(5)}..${harvest.to.slice(5)}` : '',
          [...new Set(worst)].join(' '),
        ];
      }),
    );
    expect(rows.length).toBe(150);
    tell(
      'practice-seasons',
      'When to sow fifteen crops in place at ten places; f: second best',
      table(['place', 'crop', 'windows', 'best', 'picked', 'closed by'], rows),
    );
  });
});
