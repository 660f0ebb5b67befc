import type { Site } from '../answers/known-hours.js';
import { type Bed, defaultBed, type Question } from '../answers/question.js';
import { findZone, type Zone } from '../basics/calendar.js';
import { RequestError } from '../basics/errors.js';
import type { Crop } from '../germination/crop.js';
import { crops } from '../germination/crops.js';
import { ownCrop } from '../germination/own-crop.js';
import { type ReadSeries, readSeries, zoneOfStamps } from '../readings/read-series.js';
import { reportOf, type SeriesReport } from '../readings/report.js';
import type { FileRead } from '../readings/rows-read.js';
import type { Asking, ForecastBody } from './schemas/forecast.js';

/** The question that a JSON body asks. */
export function questionOfBody({ temperatures, ...asking }: ForecastBody): Question {
  const place = placeOf(asking);
  const zone = zoneOf(asking);
  const read = temperatures.map((series, i): Read => {
    const one = readSeries(series, zone ?? temperatures.map(zoneOfStamps).find((found) => found !== undefined), [
      'temperatures',
      i,
    ]);
    return { series: one, report: reportOf(one, series.readings?.length ?? series.daily!.length) };
  });
  return questionOf(asking, place, read);
}

/** The question that a file asks together with its query. */
export function questionOfFile(asking: Asking, { series, rows, file }: FileRead): Question {
  return questionOf(asking, placeOf(asking), [{ series, report: reportOf(series, rows, file) }]);
}

/** The zone that a question names. @throws {RequestError} where it names a crop, place or bed that there is not. */
export function zoneAsked(asking: Asking): Zone | undefined {
  placeOf(asking);
  cropOf(asking.crop);
  return zoneOf(asking);
}

interface Read {
  readonly series: ReadSeries;
  readonly report: SeriesReport;
}

function questionOf(asking: Asking, place: Place | undefined, read: readonly Read[]): Question {
  const { sowing, lot, standFactor } = asking;
  const namedZone = zoneOf(asking);
  const site: Site = {
    zone: namedZone ?? read[0]!.series.zone,
    latitude: place?.latitude ?? null,
    longitude: place?.longitude ?? null,
  };
  return {
    crop: cropOf(asking.crop),
    site,
    zoneFromStamps: namedZone === undefined,
    bed: bedOf(asking),
    sowing: { date: sowing.date, time: sowing.time, depthCm: sowing.depthCm ?? null, seeds: sowing.seeds ?? null },
    lot: lot
      ? {
          germinationPercent: lot.germinationPercent ?? null,
          testedOn: lot.testedOn ?? null,
          hotLimitShiftC: lot.hotLimitShiftC,
        }
      : null,
    timeFactor: asking.timeFactor ?? null,
    standFactor: typeof standFactor === 'number' ? { from: standFactor, to: standFactor } : (standFactor ?? null),
    countDays: asking.countDays ?? null,
    series: read.map((one) => one.series),
    understood: read.map((one) => one.report),
    beyond: beyondOf(asking, site),
  };
}

function zoneOf({ where }: Pick<Asking, 'where'>): Zone | undefined {
  const name = typeof where?.place === 'object' ? where.place.timeZone : undefined;
  return name === undefined ? undefined : findZone(name);
}

type Place = Exclude<NonNullable<NonNullable<Asking['where']>['place']>, string>;

function placeOf({ where }: Asking): Place | undefined {
  if (typeof where?.bed === 'string') {
    throw new RequestError(
      'unknown-bed',
      `No bed is kept under "${where.bed}". Send where.place instead, with latitude and time zone.`,
      [{ path: ['where', 'bed'], detail: 'There is no such bed.' }],
    );
  }
  if (typeof where?.place === 'string') {
    throw new RequestError(
      'unknown-place',
      `No place is kept under "${where.place}". Send the place itself: its latitude and time zone.`,
      [{ path: ['where', 'place'], detail: 'There is no such place.' }],
    );
  }
  return where?.place;
}

function bedOf({ where }: Asking): Bed {
  return typeof where?.bed === 'object' ? { ...where.bed, wettedOn: where.bed.wettedOn ?? null } : defaultBed;
}

function cropOf(choice: Asking['crop']): Crop {
  if (typeof choice !== 'string') return ownCrop(choice);
  const crop = crops.get(choice);
  if (crop) return crop;
  throw new RequestError(
    'unknown-crop',
    `There is no crop "${choice}" here. Choose one of ${[...crops.keys()].join(', ')}, or send rows of your own.`,
    [{ path: ['crop'], detail: 'There is no such crop.' }],
  );
}

function beyondOf({ beyond }: Asking, { latitude }: Site): Question['beyond'] {
  if (beyond === undefined) return null;
  if (beyond === 'past-years') {
    throw new RequestError(
      'no-past-years',
      'No past years are kept for this place. Let "beyond" be seasonal-drift, repeat-last-week or refuse.',
      [{ path: ['beyond'], detail: 'Needs past years of the place.' }],
    );
  }
  if (beyond === 'seasonal-drift' && latitude === null) {
    throw new RequestError(
      'no-latitude',
      'The drift of the season depends on the latitude: send where.place.latitude, or let "beyond" be repeat-last-week.',
      [{ path: ['where', 'place', 'latitude'], detail: 'Is needed for seasonal-drift.' }],
    );
  }
  return beyond;
}
