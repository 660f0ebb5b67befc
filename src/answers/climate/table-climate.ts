import { addDays, daysBetween, type PlainDate, type Zone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { type FrostSide, frostDates } from '../../climate/frost-dates.js';
import type { Normals } from '../../climate/normals.js';
import type { Spot } from '../../climate/world/nearest-stations.js';
import { movedToOwnAir } from '../../climate/world/own-air-shift.js';
import { type PlaceClimate, placeClimate } from '../../climate/world/place-climate.js';
import { type StationTable, stationAt } from '../../climate/world/station-table.js';
import { tableErrorK } from '../../climate/world/table-error.js';
import { type DailyExtremes, TYPICAL_YEARS, typicalYears } from '../../climate/world/typical-years.js';
import { isZoneAgainstLongitude } from '../../climate/world/zone-against-longitude.js';
import { dailyAirSeries } from '../../readings/daily-air-series.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { STEPS_PER_K } from '../ahead/past-soil.js';
import type { Climate, FrostRisk } from './climate.js';
import { climateAssumption, climateRefusal, climateWarning } from './climate-facts.js';
import { type FrostAround, movedMinima, tunedMinima } from './tuned-minima.js';

/** A place of which no years are known. */
export interface UnknownAir extends Spot, FrostAround {
  readonly zone: Zone;
  /** Air of a year or two, too short to judge by; NaN is a missing day. */
  readonly ownAir?: DailyExtremes | null;
}

/** A place's climate from the table of stations, in the form that answers take. */
export interface TableClimate {
  /** Thirty typical years, as if they had been measured. */
  readonly airYears: ReadSeries;
  /** Their monthly means. */
  readonly normals: Normals;
  readonly annualRainMm: number | null;
  readonly climate: Climate;
  readonly assumptions: readonly Fact[];
  readonly warnings: readonly Fact[];
}

/** Nights over gardens and fields are colder than at towns and airfields, where weather stations stand, by so much of the day's range:
 * the table tells the minima of 13 stations in open country 1.3 K too warm, whose days range over 13 K. */
const OPEN_COUNTRY_SHARE = 0.09;
/** No station within this distance: the climate is not told [km]. */
const MAX_KM = 400;
/** Farther stations, or such at another height, are warned of [km, m]. */
const FAR_KM = 250;
const FAR_M = 1000;
/** Half the 80 % range of a window's first and last date, no frost date told and one told [d]: 13 stations, own years against the table. */
const PLUS_MINUS_DAYS = 11;
const PLUS_MINUS_DAYS_TOLD = 10;

/**
 * The climate of a place of which no years are known, from stations round it and what its grower knows.
 *
 * @param table    The stations.
 * @param place    The place.
 * @param lastYear The last calendar year that the typical years are dated as. Let it end two months or more before the
 * dates asked about, so that no typical day is taken for yesterday.
 * @param path     Where in the request the place stands.
 * @throws {RequestError} `no-climate-near` where no station is within 400 km; `not-understood` for a frost date that
 * cannot be true there.
 */
export function tableClimate(
  table: StationTable,
  place: UnknownAir,
  lastYear: number,
  path: readonly (string | number)[] = ['where', 'place'],
): TableClimate {
  const { latitude, longitude, elevationM, zone, ownAir } = place;
  const around = openCountry(placeClimate(table, place));
  if (around.nearestKm > MAX_KM) refuse(around.nearestKm, path);
  const months = ownAir ? { ...around, ...movedToOwnAir(around, ownAir) } : around;
  const made = typicalYears(months, latitude, longitude, lastYear);
  const tuning = tunedMinima(made, latitude, place, path);
  const air = inSteps({ ...made, minC: movedMinima(made.minC, made.maxC, tuning.movedK) });
  const { spring, autumn } = frostDates(air, 0, latitude);
  const plusMinusC = tableErrorK(around.nearestKm, elevationM !== null);
  const plusMinusDays = tuning.tunedBy ? PLUS_MINUS_DAYS_TOLD : PLUS_MINUS_DAYS;
  const annualRainMm = around.rainMm.reduce((sum, rain) => sum + rain, 0);
  const [heaviest] = around.stations;
  return {
    airYears: dailyAirSeries(datesFrom(air.firstDate, air.minC.length), air, zone),
    normals: {
      meanMaxC: Array.from(months.meanMaxC),
      meanMinC: Array.from(months.meanMinC, (minC) => minC + tuning.movedK),
    },
    annualRainMm: Number.isNaN(annualRainMm) ? null : annualRainMm,
    climate: {
      basis: 'climate-table',
      typicalYears: TYPICAL_YEARS,
      plusMinusC,
      plusMinusDays,
      stations: around.stations.map(({ index, km, share }) => ({ ...stationAt(table, index), km, share })),
      lastSpringFrost: riskOf(spring),
      firstAutumnFrost: riskOf(autumn),
      tunedBy: tuning.tunedBy,
    },
    assumptions: [
      climateAssumption('climate-table', {
        typicalYears: TYPICAL_YEARS,
        station: stationAt(table, heaviest!.index).name,
        stationKm: Math.round(heaviest!.km),
        elevationM,
        plusMinusK: Math.round(plusMinusC * 10) / 10,
        plusMinusDays,
      }),
      ...(ownAir ? [climateAssumption('climate-own-air', { days: knownDays(ownAir) })] : []),
      ...tuning.assumptions,
    ],
    warnings: [...placeWarnings(place, around), ...tuning.warnings],
  };
}

const openCountry = (climate: PlaceClimate): PlaceClimate => ({
  ...climate,
  meanMinC: climate.meanMinC.map((min, month) => min - OPEN_COUNTRY_SHARE * (climate.meanMaxC[month]! - min)),
});

function refuse(nearestKm: number, path: readonly (string | number)[]): never {
  throw new RequestError(
    'no-climate-near',
    climateRefusal('no-climate-near', { nearestKm: Math.round(nearestKm), maxKm: MAX_KM }),
    [{ path, detail: climateRefusal('no-climate-near.field') }],
  );
}

/** Within the tropics it is rain that makes the seasons [°]. */
const TROPIC_DEG = 23.44;

function placeWarnings({ zone, latitude, longitude }: UnknownAir, { nearestKm, likest }: PlaceClimate): Fact[] {
  const heightM = Math.abs(likest.aboveM);
  return [
    ...(Math.abs(latitude) < TROPIC_DEG ? [climateWarning('rain-rules')] : []),
    ...(nearestKm > FAR_KM || heightM > FAR_M
      ? [climateWarning('climate-far', { stationKm: Math.round(nearestKm), heightM: Math.round(heightM) })]
      : []),
    ...(isZoneAgainstLongitude(zone, longitude)
      ? [
          climateWarning('zone-against-longitude', {
            timeZone: zone.name,
            longitude,
            mirroredLongitude: -longitude,
          }),
        ]
      : []),
  ];
}

/** Past soil is kept with its air in whole steps; the same steps make it small. */
function inSteps({ firstDate, minC, maxC }: DailyExtremes): DailyExtremes {
  const step = (tempC: number): number => Math.round(tempC * STEPS_PER_K) / STEPS_PER_K;
  return { firstDate, minC: minC.map(step), maxC: maxC.map(step) };
}

/** Dates from 1 January of a year on. Each year repeats the days of a leap year, which is ten times as fast as reckoning them. */
function datesFrom(newYear: PlainDate, nDays: number): PlainDate[] {
  const monthDays = Array.from({ length: 366 }, (_, day) => addDays(A_LEAP_YEAR, day).slice(4));
  const dates: PlainDate[] = [];
  for (let year = Number(newYear.slice(0, 4)); dates.length < nDays; year++) {
    const isLeap = daysBetween(`${year}-02-28` as PlainDate, `${year}-03-01` as PlainDate) === 2;
    for (const monthDay of monthDays)
      if (isLeap || monthDay !== '-02-29') dates.push(`${year}${monthDay}` as PlainDate);
  }
  return dates;
}
const A_LEAP_YEAR = '2024-01-01' as PlainDate;

const riskOf = ({ risk10, risk50, risk90 }: FrostSide): FrostRisk => ({ risk10, risk50, risk90 });

const knownDays = ({ minC, maxC }: DailyExtremes): number =>
  minC.reduce((days, min, day) => (Number.isNaN(min + maxC[day]!) ? days : days + 1), 0);
