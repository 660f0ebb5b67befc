import { describe, expect, it } from 'vitest';
import { depthsWith, type FindPast, type PastSoils, pastAt, pastSoils } from '../../src/answers/ahead/past-soil.js';
import { tableClimate } from '../../src/answers/climate/table-climate.js';
import type { SowingWindows } from '../../src/answers/windows/sowing-windows.js';
import { addDays, daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { frostDates, type MonthDay } from '../../src/climate/frost-dates.js';
import { climateTable } from '../../src/climate-table.js';
import type { ReadSeries } from '../../src/readings/read-series.js';
import { type PracticePlace, practicePlace, windowsAt } from './practice-places.js';
import { hasRecords } from './records.js';
import { stationAir } from './station-air.js';
import { stationPlaces } from './stations.js';
import { errorsOf, mean, table } from './statistics.js';
import { tell } from './tell.js';

const CROPS = ['lettuce', 'tomato', 'onion', 'spinach', 'snap-bean', 'carrot', 'beet', 'pea', 'pepper', 'radish'];
/** Heights of the stations [m], from the list of stations of the U.S. Climate Reference Network. */
const ELEVATIONS_M: Readonly<Record<string, number>> = {
  CA_Merced_23_WSW: 24,
  CO_Nunn_7_NNE: 1643,
  GA_Newton_11_SW: 53,
  IL_Champaign_9_SW: 213,
  KS_Manhattan_6_SSW: 345,
  MN_Goodridge_12_NNW: 351,
  NC_Asheville_8_SSW: 656,
  NH_Durham_2_N: 36,
  NY_Ithaca_13_E: 374,
  OR_Corvallis_10_SSW: 95,
  TX_Austin_33_NW: 415,
  WA_Spokane_17_SSW: 690,
  WI_Necedah_5_WNW: 284,
};
const LAST_TYPICAL_YEAR = 2022;
const OWN_FROM = '2009-01-01' as PlainDate;

/** Finds the soil at all depths of a bed in one run, and remembers it. */
function remembering(): FindPast {
  const found = new Map<string, PastSoils>();
  return (series, bedding, phaseMs, shouldStop) => {
    const key = JSON.stringify([bedding.bed, depthsWith(bedding.depthCm)]);
    const soils = found.get(key) ?? pastSoils(series, bedding, phaseMs, shouldStop);
    found.set(key, soils);
    return pastAt(soils, bedding.depthCm);
  };
}

const withAir = (place: PracticePlace, air: ReadSeries): PracticePlace => ({
  ...place,
  series: [air],
  findPast: remembering(),
});

interface Compared {
  readonly otherwise: number;
  readonly goodOtherwise: number;
  readonly surenessOff: number;
  readonly halfOff: number;
  readonly edges: readonly number[];
}

const isOpen = ({ windows }: SowingWindows, date: string, grades: readonly string[]): boolean =>
  windows.some(({ from, to, grade }) => grades.includes(grade) && date >= from && date <= to);

function compare(own: SowingWindows, other: SowingWindows): Compared {
  const differs = (grades: readonly string[]) =>
    own.dates.filter(({ date }) => isOpen(own, date, grades) !== isOpen(other, date, grades)).length;
  const both = own.dates.flatMap((one, day) => {
    const there = other.dates[day]!;
    return isOpen(own, one.date, ['good']) && isOpen(other, one.date, ['good']) && one.halfDays && there.halfDays
      ? [Math.abs(one.halfDays.p50 - there.halfDays.p50)]
      : [];
  });
  // Edges of windows that are there in both.
  const edges = own.windows.flatMap(({ from, to, grade }) => {
    const met = other.windows.filter((one) => one.grade === grade && one.from <= to && one.to >= from);
    return met.length === 1 ? [daysBetween(from, met[0]!.from), daysBetween(to, met[0]!.to)] : [];
  });
  return {
    otherwise: differs(['good', 'fair']),
    goodOtherwise: differs(['good']),
    surenessOff: mean(own.dates.map((one, day) => Math.abs(one.sureness! - other.dates[day]!.sureness!))),
    halfOff: both.length > 0 ? mean(both) : Number.NaN,
    edges,
  };
}

const known = (values: readonly number[]): number[] => values.filter((value) => !Number.isNaN(value));
const half80 = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.floor(0.9 * sorted.length)]! - sorted[Math.floor(0.1 * sorted.length)]!) / 2;
};

/** Means of the twelve months of some days [°C]. */
function monthMeans(firstDate: PlainDate, tempsC: Float64Array): number[] {
  const sums = new Float64Array(12);
  const counts = new Float64Array(12);
  tempsC.forEach((tempC, day) => {
    if (Number.isNaN(tempC)) return;
    const month = Number(addDays(firstDate, day).slice(5, 7)) - 1;
    sums[month]! += tempC;
    counts[month]!++;
  });
  return [...sums].map((sum, month) => sum / counts[month]!);
}

// NOAA U.S. Climate Reference Network, product daily01: Diamond and others (2013), Bell and others (2013).
describe.runIf(hasRecords)('windows from the table of stations beside those from own years', () => {
  const stations = hasRecords ? stationPlaces() : [];

  it('judge few days otherwise, and fewer once the last frost is told', () => {
    const sets = ['table', 'told'] as const;
    const all = { table: [] as (Compared & { crop: string })[], told: [] as (Compared & { crop: string })[] };
    const rows: (string | number)[][] = [];
    const minima = { table: [] as number[], told: [] as number[], max: [] as number[] };
    for (const { station, latitude, longitude } of stations) {
      const place = practicePlace(station);
      const { air } = stationAir(station);
      const from = Math.max(0, daysBetween(air.firstDate, OWN_FROM));
      const own = { firstDate: addDays(air.firstDate, from), minC: air.minC.slice(from), maxC: air.maxC.slice(from) };
      const frost = frostDates(own, 0, latitude);
      const lastFrostAround = frost.spring.risk50;
      const spot = { latitude, longitude, elevationM: ELEVATIONS_M[station]!, zone: place.site.zone };
      const asked = { table: spot, told: { ...spot, lastFrostAround } };
      const climates = {
        table: tableClimate(climateTable(), asked.table, LAST_TYPICAL_YEAR),
        told: tableClimate(climateTable(), asked.told, LAST_TYPICAL_YEAR),
      };
      const ownSeries: ReadSeries = {
        ...place.series[0]!,
        days: place.series[0]!.days.filter(({ date }) => date >= OWN_FROM),
      };
      const ownPlace = withAir(place, ownSeries);
      const ownMin = monthMeans(own.firstDate, own.minC);
      const ownMax = monthMeans(own.firstDate, own.maxC);
      const places = { table: withAir(place, climates.table.airYears), told: withAir(place, climates.told.airYears) };
      const here = { table: [] as Compared[], told: [] as Compared[] };
      for (const crop of CROPS) {
        const truth = windowsAt(ownPlace, crop);
        for (const set of sets) {
          const compared = { ...compare(truth, windowsAt(places[set], crop)), crop };
          all[set].push(compared);
          here[set].push(compared);
        }
      }
      for (const set of sets) {
        const { days } = climates[set].airYears;
        const firstDate = days[0]!.date;
        const made = (of: 'min' | 'max') =>
          monthMeans(
            firstDate,
            Float64Array.from(days, (day) => day[of]!),
          );
        minima[set].push(...made('min').map((min, month) => min - ownMin[month]!));
        if (set === 'table') minima.max.push(...made('max').map((max, month) => max - ownMax[month]!));
      }
      rows.push([
        station,
        ...sets.flatMap((set) => [
          mean(here[set].map(({ otherwise }) => otherwise)),
          mean(here[set].map(({ goodOtherwise }) => goodOtherwise)),
        ]),
        lastFrostAround as MonthDay,
        ...sets.map((set) => climates[set].climate.lastSpringFrost!.risk50 ?? ''),
        frost.autumn.risk50 as MonthDay,
        ...sets.map((set) => climates[set].climate.firstAutumnFrost!.risk50 ?? ''),
        climates.told.climate.tunedBy!.minimaMovedC,
      ]);
    }
    tell(
      'climate-windows-stations',
      'Days of the year judged otherwise than from own years (any window, good window), by the table alone and with the last frost told; last and first frosts, own and as made; minima moved [K]',
      table(['', 'any', 'good', 'told', 'good', 'last', 'table', 'told', 'first', 'table', 'told', 'moved K'], rows),
    );
    const summary = (some: readonly Compared[]) => [
      mean(some.map(({ otherwise }) => otherwise)),
      mean(some.map(({ goodOtherwise }) => goodOtherwise)),
      mean(some.map(({ surenessOff }) => surenessOff)),
      mean(known(some.map(({ halfOff }) => halfOff))),
      half80(some.flatMap(({ edges }) => edges)),
    ];
    const byCrop = CROPS.flatMap((crop) =>
      sets.map((set) => [`${crop}, ${set}`, ...summary(all[set].filter((one) => one.crop === crop))]),
    );
    tell(
      'climate-windows',
      `Windows from the table beside those from own years. Monthly maxima err by ${errorsOf(minima.max).rmse.toFixed(2)} K, minima by ${errorsOf(minima.table).rmse.toFixed(2)} K (bias ${errorsOf(minima.table).bias.toFixed(2)}), with the last frost told by ${errorsOf(minima.told).rmse.toFixed(2)} K`,
      table(
        ['', 'days otherwise', 'good', 'sureness', 'half, days', 'edges, 80 % half'],
        [...byCrop, ...sets.map((set) => [set, ...summary(all[set])])],
      ),
    );
    const [table0, told0] = sets.map((set) => mean(all[set].map(({ otherwise }) => otherwise)));
    expect(table0).toBeLessThanOrEqual(22);
    expect(told0).toBeLessThanOrEqual(16);
    for (const set of sets) expect(mean(known(all[set].map(({ halfOff }) => halfOff)))).toBeLessThanOrEqual(0.6);
  });
});
