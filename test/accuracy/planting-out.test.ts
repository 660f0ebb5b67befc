import { describe, expect, it } from 'vitest';
import { airAboveBed } from '../../src/answers/soil/air-above-bed.js';
import { modelledBed } from '../../src/answers/soil/modelled-bed.js';
import { DAY_MS, daysBetween, fixedZone, type PlainDate, startOfDay } from '../../src/basics/calendar.js';
import { firstPlantingOut, type PlantingGrade, plantingOutGrades } from '../../src/growth/planting-out.js';
import { readSeries } from '../../src/readings/read-series.js';
import { cropCalled } from '../unit/germination/make.js';
import { hasRecords, tableOf } from './records.js';
import { stationAir } from './station-air.js';
import { dailyMeans, stationPlaces } from './stations.js';
import { tell } from './tell.js';

const STATIONS = {
  IL: 'IL_Champaign_9_SW',
  NY: 'NY_Ithaca_13_E',
  NH: 'NH_Durham_2_N',
  NC: 'NC_Asheville_8_SSW',
  KS: 'KS_Manhattan_6_SSW',
  GA: 'GA_Newton_11_SW',
  TX: 'TX_Austin_33_NW',
} as const;
type Place = keyof typeof STATIONS;

/** The grades of every date at a station for a crop, in the service's own bare, moist bed. */
function gradesAt(place: Place, crop: string): (date: PlainDate) => PlantingGrade | null {
  const { air, latitude, soilC } = bedAt(place);
  const needs = cropCalled(crop).plantingOut!;
  return plantingOutGrades(needs, { ...air, soilC }, { latitudeDeg: latitude });
}

const beds = new Map<Place, ReturnType<typeof stationAir> & { soilC: Float64Array }>();
function bedAt(place: Place) {
  const known = beds.get(place);
  if (known) return known;
  const station = STATIONS[place];
  const { longitude, latitude } = stationPlaces().find((one) => one.station === station)!;
  const zone = fixedZone(60 * Math.round(longitude / 15));
  const own = stationAir(station);
  const { firstDate, minC } = own.air;
  const daily = tableOf(`stations/uscrn_${station}.csv`)
    .filter((row) => row.tmin_c !== '' && row.tmax_c !== '')
    .map((row) => ({ date: row.date as PlainDate, min: Number(row.tmin_c), max: Number(row.tmax_c) }));
  const startMs = startOfDay(firstDate, zone);
  const whole = { phaseMs: startMs, fromMs: startMs, toMs: startMs + minC.length * DAY_MS };
  const site = { zone, latitude, longitude, annualRainMm: null };
  const air = airAboveBed([readSeries({ medium: 'air', unit: 'C', daily }, zone, [])], site, whole)!;
  const make = { kind: 'open-ground', cover: 'bare', moisture: 'moist', shadePercent: 0 } as const;
  const bed = { ...own, soilC: dailyMeans(modelledBed(air, latitude, make, [5]).hourlyC[0]!, minC.length) };
  beds.set(place, bed);
  return bed;
}

const first = (place: Place, crop: string, least: 'good' | 'fair' = 'good'): PlainDate =>
  firstPlantingOut(gradesAt(place, crop), '2027-01-01' as PlainDate, least)!;

const off = (found: PlainDate, date: string): number => daysBetween(`2027-${date}` as PlainDate, found);

/** By an independent program over the same air, with the service's own soil. */
const WORKED: Readonly<Record<string, Readonly<Record<Place, string>>>> = {
  tomato: { IL: '05-07', NY: '05-26', NH: '05-25', NC: '05-14', KS: '05-05', GA: '03-27', TX: '03-12' },
  pepper: { IL: '05-19', NY: '06-24', NH: '06-16', NC: '05-27', KS: '05-14', GA: '04-16', TX: '03-29' },
  celery: { IL: '05-15', NY: '06-09', NH: '06-05', NC: '05-16', KS: '05-07', GA: '04-02', TX: '03-26' },
  cabbage: { IL: '04-07', NY: '05-01', NH: '04-17', NC: '03-28', KS: '04-11', GA: '02-06', TX: '02-20' },
};
/** Which years are left out, and how a bed is told to be, moves a date by so much. */
const WORKED_DAYS = 5;
/** Winters that hardly freeze leave cabbage's limit of -5 °C to a few nights in all the years: 6 and 9 days there. */
const OF_FEW_NIGHTS: Readonly<Record<string, number>> = { 'cabbage GA': 6, 'cabbage TX': 9 };

/**
 * When extension services say that plants go out: the first and the last date named for it.
 * IL: University of Illinois Extension, recommended planting periods for central Illinois. NY: Cornell Cooperative Extension of
 * Tompkins County, Memorial Day weekend; cabbage its neighbour Chenango County, the last week of April. KS: K-State Research and
 * Extension (Upham), planting calendar, a week later in the north of the state for cabbage. NH: University of New Hampshire Extension,
 * end of April for the cabbage kinds, 30 May for tomato; pepper University of Vermont Extension, late May or early June. NC: Extension
 * Master Gardeners of Buncombe County, Mother's Day; cabbage a planting guide for Asheville, later in March. GA: University of Georgia
 * Extension, vegetable planting chart, two weeks before its middle Georgia; tomato and pepper from memory. TX: Travis County Master
 * Gardeners, March, pepper from its middle on; cabbage Texas A&M AgriLife Extension, four weeks before the last frost.
 */
const PUBLISHED: Readonly<Record<string, Readonly<Record<Place, readonly [string, string]>>>> = {
  tomato: {
    IL: ['05-10', '06-01'],
    NY: ['05-25', '05-31'],
    NH: ['05-30', '05-30'],
    NC: ['05-08', '05-14'],
    KS: ['05-09', '05-09'],
    GA: ['03-11', '04-17'],
    TX: ['03-01', '03-31'],
  },
  pepper: {
    IL: ['05-10', '06-01'],
    NY: ['05-25', '05-31'],
    NH: ['05-25', '06-07'],
    NC: ['05-08', '05-14'],
    KS: ['05-16', '05-16'],
    GA: ['03-18', '05-18'],
    TX: ['03-15', '03-31'],
  },
  cabbage: {
    IL: ['04-10', '07-15'],
    NY: ['04-24', '04-30'],
    NH: ['04-25', '04-30'],
    NC: ['03-15', '03-31'],
    KS: ['04-04', '04-11'],
    GA: ['01-01', '03-01'],
    TX: ['02-04', '02-04'],
  },
};
/** Lists hold for counties, the rule for a thermometer: weeks off would be wrong, days are not. */
const [MEDIAN_DAYS, MEAN_ABSOLUTE_DAYS, WORST_DAYS] = [3, 5, 14];

describe.runIf(hasRecords)('planting out at seven stations of the U.S. Climate Reference Network', () => {
  it.each(Object.entries(WORKED))('%s: on the dates that the rules give by hand', (crop, dates) => {
    for (const [place, date] of Object.entries(dates) as [Place, string][]) {
      const found = first(place, crop);
      const most = OF_FEW_NIGHTS[`${crop} ${place}`] ?? WORKED_DAYS;
      expect(Math.abs(off(found, date)), `${place}: ${found}`).toBeLessThanOrEqual(most);
    }
  });

  it('fits what extension services print, and is never weeks before it', () => {
    const errors: number[] = [];
    const lines: string[] = [];
    for (const [crop, places] of Object.entries(PUBLISHED)) {
      for (const [place, [from, to]] of Object.entries(places) as [Place, readonly [string, string]][]) {
        const found = first(place, crop, 'fair');
        const error = Math.min(0, off(found, from)) + Math.max(0, off(found, to));
        errors.push(error);
        lines.push(`${crop} ${place}: ${found.slice(5)}, printed ${from} to ${to}: ${error} days`);
      }
    }
    errors.sort((a, b) => a - b);
    const median = errors[errors.length >> 1]!;
    const mae = errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length;
    lines.push(`median ${median} days, mean absolute ${mae.toFixed(1)}, of ${errors.length}`);
    tell('planting-out', 'Planting out against printed dates', lines.join('\n'));
    expect(Math.abs(median)).toBeLessThanOrEqual(MEDIAN_DAYS);
    expect(mae).toBeLessThanOrEqual(MEAN_ABSOLUTE_DAYS);
    expect(Math.max(...errors.map(Math.abs))).toBeLessThanOrEqual(WORST_DAYS);
  });

  it('goes by the air alone to within ten days of the bed’s own soil', () => {
    for (const place of Object.keys(STATIONS) as Place[]) {
      const { air, latitude } = bedAt(place);
      for (const crop of ['tomato', 'pepper', 'cucumber']) {
        const needs = cropCalled(crop).plantingOut!;
        const byAir = plantingOutGrades(needs, { ...air, soilC: null }, { latitudeDeg: latitude });
        const found = firstPlantingOut(byAir, '2027-01-01' as PlainDate)!;
        const days = daysBetween(first(place, crop, 'fair'), found);
        expect(Math.abs(days), `${crop} ${place}: ${found}`).toBeLessThanOrEqual(10);
      }
    }
  });
});
