import { describe, expect, it } from 'vitest';
import { defaultBed } from '../../src/answers/question.js';
import { usualCriteria } from '../../src/answers/windows/dates-in-years.js';
import { harvestSeason, soilCourse } from '../../src/answers/windows/harvest-season.js';
import { addDays, daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { batchesFor, type DaySpan } from '../../src/garden/plan/batches.js';
import { directStarts, gradesOfStarts, indoorStarts, ripening } from '../../src/garden/plan/starts.js';
import { planStandDays, startsOfYear } from '../../src/garden/plan/starts-of-year.js';
import { harvestPeriodOf, weeksOfHarvest } from '../../src/garden/sowing/harvest-period.js';
import { bearsPlants, daysInRoom } from '../../src/garden/sowing/indoors.js';
import type { Crop } from '../../src/germination/crop.js';
import { DEFAULT_ROOM_C, plantingOutOf } from '../../src/growth/tray-dates.js';
import { fromTray } from '../../src/growth/tray-growth.js';
import { cropCalled, seedOf } from '../unit/germination/make.js';
import {
  equalSteps,
  type MeasuredYear,
  measuredYears,
  pickedIn,
  ripeIn,
  ripeWeeks,
  suppliedWeeks,
  yearsFromAir,
} from './judged-harvest.js';
import { hasRecords } from './records.js';
import { pastOf, type Station, stationOf, stationPlaces } from './stations.js';
import { table } from './statistics.js';
import { tell } from './tell.js';

const CROPS = ['lettuce', 'spinach', 'snap-bean', 'carrot', 'beet', 'radish', 'bunching-onion', 'pea'] as const;
/** A season begins with the year, so that no two years have a day in common. */
const FIRST_DATE = '2025-01-15' as PlainDate;
const LAST_SOWING_DAY = 300;
const N_DAYS = 340;
/** Years by which the others are told; fewer tell little. */
const MIN_YEARS = 8;

/** Harvests wanted, the same at all stations, whether or not anything can be had there then. */
const HARVESTS = [
  ['1 May to 29 October', '2025-05-01', '2025-10-29'],
  ['15 April to 30 June', '2025-04-15', '2025-06-30'],
  ['15 June to 31 August', '2025-06-15', '2025-08-31'],
  ['1 September to 14 November', '2025-09-01', '2025-11-14'],
] as const;
const WHOLE = HARVESTS[0][0];

/** Who says when to sow; in each case as many sowings as the plan makes, but for the last three. */
const SOWERS = [
  'plan',
  'counted back',
  'in step',
  'between its ends',
  'counted back, all',
  'all in trays',
  'plan with trays',
] as const;
type Sower = (typeof SOWERS)[number];

/** Weeks added up over places and years. */
interface Tally {
  seasons: number;
  weeks: number;
  /** Weeks that some sowing in the bed would have reached in the year that was judged. */
  reachable: number;
  promised: number;
  sowings: number;
  allSowings: number;
  sowingsWithTrays: number;
  readonly ripe: Record<Sower, number>;
  readonly supplied: Record<Sower, number>;
}

const nothing = (): Tally => {
  const none = (): Record<Sower, number> =>
    Object.fromEntries(SOWERS.map((sower) => [sower, 0])) as Record<Sower, number>;
  return {
    seasons: 0,
    weeks: 0,
    reachable: 0,
    promised: 0,
    sowings: 0,
    allSowings: 0,
    sowingsWithTrays: 0,
    ripe: none(),
    supplied: none(),
  };
};

function weeksBetween(from: string, to: string): DaySpan[] {
  const [first, last] = [from, to].map((date) => daysBetween(FIRST_DATE, date as PlainDate)) as [number, number];
  return Array.from({ length: Math.floor((last - first + 1) / 7) }, (_, i) => ({
    fromDay: first + 7 * i,
    toDay: first + 7 * i + 6,
  }));
}

/** Days of sowing in equal steps of the calendar, so that by the published days the first and the last batch are in time. */
function countedBack(weeks: readonly DaySpan[], batchWeeks: number, publishedDays: number, n: number): number[] {
  const lastFirst = batchWeeks * (Math.ceil(weeks.length / batchWeeks) - 1);
  const sownFor = (first: number): number => {
    const last = Math.min(weeks.length, first + batchWeeks) - 1;
    return Math.max(0, (weeks[first]!.fromDay + weeks[last]!.toDay) / 2 - publishedDays);
  };
  return equalSteps(sownFor(0), sownFor(lastFirst), n);
}

/** Whether a date bears plants of a crop from their trays, by the air of all years but one; worked out once. */
const datesKnown = new Map<string, (date: PlainDate) => boolean>();
function datesWithout(station: Station, year: number, crop: Crop): (date: PlainDate) => boolean {
  const key = `${station.name} ${year} ${crop.id}`;
  const { days } = station.bed.air.record;
  const others = (extreme: 'minC' | 'maxC'): Float64Array =>
    Float64Array.from(days, (one, day) => (station.years[day] === year ? NaN : one[extreme]));
  const known =
    datesKnown.get(key) ??
    bearsPlants(
      crop,
      { firstDate: station.firstDate, minC: others('minC'), maxC: others('maxC'), soilC: null },
      { latitudeDeg: station.latitude },
    );
  datesKnown.set(key, known);
  return known;
}

// NOAA U.S. Climate Reference Network, product daily01: Diamond and others (2013), Bell and others (2013).
describe.runIf(hasRecords)('plans made from air and the other years, judged by measured soil', () => {
  const tallies = new Map<string, Tally>();
  const add = (names: readonly string[], what: (tally: Tally) => void): void => {
    for (const name of names) {
      const tally = tallies.get(name) ?? nothing();
      tallies.set(name, tally);
      what(tally);
    }
  };

  it('reach more of the weeks wanted than equal steps of the calendar with as many sowings', () => {
    for (const place of stationPlaces()) {
      const station = stationOf(place);
      const measured = measuredYears(station, FIRST_DATE, N_DAYS);
      for (const id of CROPS) {
        const crop = cropCalled(id);
        const picking = harvestPeriodOf(crop)!;
        const batchWeeks = weeksOfHarvest(picking);
        const publishedDays = (crop.maturity!.fromDays + crop.maturity!.toDays) / 2;
        // Nothing published measures how short days slow growth: neither the plan nor the judge counts it here.
        const ripe = ripening(picking, FIRST_DATE, N_DAYS, null);
        const { zone, latitude } = station;
        const site = { zone, latitude, longitude: null, annualRainMm: null };
        const dates = Array.from({ length: N_DAYS }, (_, day) => addDays(FIRST_DATE, day));
        const { air } = pastOf(station, new Float64Array());
        const toHarvest = harvestSeason(
          { crop, site, bed: defaultBed, from: FIRST_DATE, timeFactor: null },
          air,
          dates,
        )!;
        const ofAir = yearsFromAir(station, FIRST_DATE, N_DAYS, planStandDays(crop));
        const season = {
          crop,
          seed: seedOf(crop),
          picking,
          firstDate: FIRST_DATE,
          nDays: LAST_SOWING_DAY,
          ripe,
          harvest: toHarvest,
          soilC: soilCourse(ofAir, N_DAYS),
        };
        const years = ofAir.map((own) => ({ year: own.year, starts: startsOfYear(season, own) }));
        // No soil judges a tray: half is up as the room says, and only the air of the year judges the plants.
        const needs = plantingOutOf(crop);
        const planted = { ...toHarvest, ...(needs ? fromTray(crop.growth!, toHarvest.kinds, needs) : {}) };
        const inGarden = (plantOut: number, year: MeasuredYear): DaySpan | null =>
          ripeIn(year, planted, picking)(plantOut, plantOut);
        const weeksInTray = crop.weeksInTrays;
        /** Planted out as soon as it is fit, whatever the nights are; null: not moved. */
        const inTray = (day: number, year: MeasuredYear): DaySpan | null => {
          const half = day + Math.round(daysInRoom(crop, DEFAULT_ROOM_C)!);
          return weeksInTray === null ? null : inGarden(half + 7 * weeksInTray, year);
        };
        for (const truth of measured) {
          const others = years.filter(({ year }) => year !== truth.year);
          if (others.length < MIN_YEARS) continue;
          const told = others.map((one) => one.starts);
          const { sureness } = usualCriteria;
          const gradeOf = gradesOfStarts(told, LAST_SOWING_DAY, { sureness, isUsual: false });
          const known = { ...season, years: told, gradeOf };
          const starts = directStarts(known);
          const trays = indoorStarts(known, DEFAULT_ROOM_C, datesWithout(station, truth.year, crop));
          const standing = ({ indoors }: (typeof trays)[number], year: MeasuredYear): DaySpan | null =>
            inGarden(daysBetween(FIRST_DATE, indoors!.plantOut), year);
          const picked = pickedIn(truth, crop, ripeIn(truth, toHarvest, picking));
          for (const [harvest, from, to] of HARVESTS) {
            const weeks = weeksBetween(from, to);
            const { batches, unreached } = batchesFor(weeks, batchWeeks, [starts]);
            const days = batches.map(({ start }) => start.day);
            const nAll = Math.ceil(weeks.length / batchWeeks);
            const sown: Record<Sower, readonly number[]> = {
              plan: days,
              'counted back': countedBack(weeks, batchWeeks, publishedDays, days.length),
              'in step': days.map((_, i) => days[0]! + 7 * batchWeeks * i),
              'between its ends': equalSteps(days[0] ?? 0, days.at(-1) ?? 0, days.length),
              'counted back, all': countedBack(weeks, batchWeeks, publishedDays, nAll),
              'all in trays': [],
              'plan with trays': [],
            };
            const allInTrays = sown['counted back, all'].map((day) => inTray(day, truth) ?? picked[day] ?? null);
            const withTrays = batchesFor(weeks, batchWeeks, [starts, trays]).batches.map(({ start }) =>
              start.indoors ? standing(start, truth) : (picked[start.day] ?? null),
            );
            add([harvest, ...(harvest === WHOLE ? [id] : []), 'all'], (tally) => {
              tally.seasons++;
              tally.weeks += weeks.length;
              tally.reachable += ripeWeeks(picked, weeks);
              tally.promised += weeks.length - unreached.length;
              tally.sowings += days.length;
              tally.allSowings += nAll;
              tally.sowingsWithTrays += withTrays.length;
              for (const sower of SOWERS) {
                const ofTrays = { 'all in trays': allInTrays, 'plan with trays': withTrays };
                const pickings =
                  sower in ofTrays
                    ? ofTrays[sower as keyof typeof ofTrays]
                    : sown[sower].map((day) => picked[day] ?? null);
                tally.ripe[sower] += ripeWeeks(pickings, weeks);
                tally.supplied[sower] += suppliedWeeks(pickings, weeks, batchWeeks);
              }
            });
          }
        }
      }
    }
    const row = (name: string, what: 'ripe' | 'supplied') => {
      const tally = tallies.get(name)!;
      const percent = (weeks: number): string => ((100 * weeks) / tally.weeks).toFixed(0);
      return [
        name,
        String(tally.seasons),
        percent(tally.reachable),
        percent(tally.promised),
        ...SOWERS.map((sower) => percent(tally[what][sower])),
        pointsAhead(name, what).toFixed(1),
        (tally.sowings / tally.seasons).toFixed(1),
        (tally.allSowings / tally.seasons).toFixed(1),
        (tally.sowingsWithTrays / tally.seasons).toFixed(1),
      ];
    };
    const pointsAhead = (name: string, what: 'ripe' | 'supplied'): number => {
      const tally = tallies.get(name)!;
      return (100 * (tally[what].plan - tally[what]['counted back'])) / tally.weeks;
    };
    const names = ['all', ...HARVESTS.map(([name]) => name), ...CROPS];
    const header = [
      'harvest wanted',
      'seasons',
      'reachable',
      'promised',
      ...SOWERS,
      'ahead',
      'sowings',
      'of all',
      'with trays',
    ];
    for (const [what, title] of [
      ['ripe', 'in which something is ripe'],
      ['supplied', 'in which the number wanted is ripe, a batch holding as much as its weeks want'],
    ] as const) {
      tell(
        `plans-${what}`,
        `Percent of the weeks wanted ${title}, ${CROPS.length} crops sown in the bed at 13 stations (crops by themselves: ${WHOLE}). Plans: from air and the other years. Judge: the chart's rates added up over measured daily means at 5 cm, growth and frosts by the year's measured air. With as many sowings: "counted back" in equal steps of the calendar from the first wanted week less the published days to the last; "in step" from the plan's first date on, one each time a batch is over; "between its ends" equal steps from the plan's first date to its last. "All": counted back with a sowing for each batch that is wanted. "All in trays": the same in a room of ${DEFAULT_ROOM_C} °C, planted out when fit. "With trays": what the bed does not reach is started there, and planted out when nights bear it; of trays no soil is the judge, only frost. Ahead: points, plan before counted back`,
        table(
          header,
          names.map((name) => row(name, what)),
        ),
      );
    }
    const all = tallies.get('all')!;
    const points = (weeks: number): number => (100 * weeks) / all.weeks;
    // What a plan promises of the bed comes true, though it is promised from half of the years on.
    expect(all.ripe.plan / all.promised).toBeGreaterThan(0.9);
    for (const what of ['ripe', 'supplied'] as const) {
      expect(pointsAhead('all', what)).toBeGreaterThan(what === 'ripe' ? 5 : 8);
      expect(all[what].plan).toBeGreaterThan(all[what]['in step']);
    }
    // Equal steps pay for sowings in heat and cold, and for growth that is quick in summer and slow in autumn: most where a crop
    // takes long, nothing with radishes.
    for (const crop of ['lettuce', 'snap-bean', 'carrot', 'beet', 'pea']) {
      expect(pointsAhead(crop, 'supplied'), crop).toBeGreaterThanOrEqual(10);
    }
    // With trays fewer sowings reach more weeks than equal steps for every batch. That gain is the trays', not the dates':
    // whoever starts all in trays, in equal steps, reaches as many weeks or more.
    expect(points(all.ripe['plan with trays'] - all.ripe['counted back, all'])).toBeGreaterThanOrEqual(4);
    expect(all.sowingsWithTrays).toBeLessThan(0.7 * all.allSowings);
  });
});
