import type { Site } from '../answers/known-hours.js';
import { type Bed, defaultBed, type Lot, type Question, USUAL_DEPTH_CM } from '../answers/question.js';
import type { SoilQuestion } from '../answers/soil-temperatures.js';
import type { WindowQuestion } from '../answers/sowing-windows.js';
import { addDays, dateAt, findZone, type Zone } from '../basics/calendar.js';
import { RequestError } from '../basics/errors.js';
import type { Crop } from '../germination/crop.js';
import { crops } from '../germination/crops.js';
import { ownCrop } from '../germination/own-crop.js';
import { type ReadSeries, readSeries, zoneOfStamps } from '../readings/read-series.js';
import { reportOf, type SeriesReport } from '../readings/report.js';
import type { FileRead } from '../readings/rows-read.js';
import type { Asking, ForecastBody } from './schemas/forecast.js';
import type { SoilAsking, SoilBody } from './schemas/soil.js';
import type { WindowAsking, WindowBody } from './schemas/windows.js';

/** The question that a JSON body asks. */
export function questionOfBody({ temperatures, ...asking }: ForecastBody): Question {
  placeOf(asking);
  return questionOf(asking, readAll(temperatures, zoneOf(asking)));
}

/** The question of soil temperatures that a JSON body asks. */
export function soilQuestionOfBody({ temperatures, ...asking }: SoilBody): SoilQuestion {
  placeOf(asking);
  return soilQuestionOf(asking, readAll(temperatures, zoneOf(asking)));
}

/** The question of soil temperatures that a file asks together with its query. */
export function soilQuestionOfFile(asking: SoilAsking, { series, rows, file }: FileRead): SoilQuestion {
  return soilQuestionOf(asking, [{ series, report: reportOf(series, rows, file) }]);
}

/** The question of sowing windows that a JSON body asks on a day. */
export function windowQuestionOfBody({ temperatures, ...asking }: WindowBody, now: Date): WindowQuestion {
  placeOf(asking);
  return windowQuestionOf(asking, readAll(temperatures, zoneOf(asking)), now);
}

/** The question of sowing windows that a file asks together with its query. */
export function windowQuestionOfFile(
  asking: WindowAsking,
  { series, rows, file }: FileRead,
  now: Date,
): WindowQuestion {
  return windowQuestionOf(asking, [{ series, report: reportOf(series, rows, file) }], now);
}

function windowQuestionOf(asking: WindowAsking, read: readonly Read[], now: Date): WindowQuestion {
  const crop = cropOf(asking.crop);
  const site = siteOf(asking, read);
  const from = asking.from ?? dateAt(now.getTime(), site.zone);
  const { share, shareIfHeld, sureness, sowing, lot } = asking;
  return {
    crop,
    site,
    bed: bedOf(asking),
    depthCm: sowing.depthCm ?? crop.sowingDepthCm ?? USUAL_DEPTH_CM,
    time: sowing.time,
    lot: lotOf(lot),
    timeFactor: asking.timeFactor ?? null,
    series: read.map((one) => one.series),
    understood: read.map((one) => one.report),
    from,
    to: asking.to ?? addDays(from, 364),
    criteria: { share, shareIfHeld, maxDays: asking.maxDays ?? crop.maxDays, sureness },
    prefer: asking.prefer,
    normals: null,
  };
}

function readAll(temperatures: ForecastBody['temperatures'], zone: Zone | undefined): Read[] {
  const known = zone ?? temperatures.map(zoneOfStamps).find((found) => found !== undefined);
  return temperatures.map((series, i) => {
    const one = readSeries(series, known, ['temperatures', i]);
    return { series: one, report: reportOf(one, series.readings?.length ?? series.daily!.length) };
  });
}

/** The question that a file asks together with its query. */
export function questionOfFile(asking: Asking, { series, rows, file }: FileRead): Question {
  return questionOf(asking, [{ series, report: reportOf(series, rows, file) }]);
}

/** The zone that a question names. @throws {RequestError} where it names a crop, place or bed that there is not. */
export function zoneAsked(asking: Pick<Asking, 'where'> & { crop?: Asking['crop'] | undefined }): Zone | undefined {
  placeOf(asking);
  if (asking.crop !== undefined) cropOf(asking.crop);
  return zoneOf(asking);
}

interface Read {
  readonly series: ReadSeries;
  readonly report: SeriesReport;
}

function questionOf(asking: Asking, read: readonly Read[]): Question {
  const { sowing, lot, standFactor } = asking;
  const site = siteOf(asking, read);
  return {
    crop: cropOf(asking.crop),
    site,
    zoneFromStamps: zoneOf(asking) === undefined,
    bed: bedOf(asking),
    sowing: { date: sowing.date, time: sowing.time, depthCm: sowing.depthCm ?? null, seeds: sowing.seeds ?? null },
    lot: lotOf(lot),
    timeFactor: asking.timeFactor ?? null,
    standFactor: typeof standFactor === 'number' ? { from: standFactor, to: standFactor } : (standFactor ?? null),
    countDays: asking.countDays ?? null,
    series: read.map((one) => one.series),
    understood: read.map((one) => one.report),
    beyond: beyondOf(asking, site),
    normals: null,
  };
}

function soilQuestionOf(asking: SoilAsking, read: readonly Read[]): SoilQuestion {
  const site = siteOf(asking, read);
  const crop = asking.crop === undefined ? null : cropOf(asking.crop);
  return {
    site,
    bed: bedOf(asking),
    depthCm: asking.depthCm ?? asking.sowing?.depthCm ?? crop?.sowingDepthCm ?? USUAL_DEPTH_CM,
    from: asking.from ?? null,
    to: asking.to ?? null,
    step: asking.step,
    series: read.map((one) => one.series),
    understood: read.map((one) => one.report),
    beyond: beyondOf(asking, site),
    normals: null,
  };
}

const lotOf = (lot: Asking['lot']): Lot | null =>
  lot
    ? {
        germinationPercent: lot.germinationPercent ?? null,
        testedOn: lot.testedOn ?? null,
        hotLimitShiftC: lot.hotLimitShiftC,
      }
    : null;

function siteOf(asking: Pick<Asking, 'where'>, read: readonly Read[]): Site {
  const place = placeOf(asking);
  const zone = zoneOf(asking) ?? read[0]?.series.zone;
  if (!zone) {
    throw new RequestError(
      'time-zone-needed',
      'Dates mean nothing without the zone of the place: send where.place.timeZone.',
      [{ path: ['where', 'place', 'timeZone'], detail: 'Is needed where no temperatures are sent.' }],
    );
  }
  return {
    zone,
    latitude: place?.latitude ?? null,
    longitude: place?.longitude ?? null,
    annualRainMm: place?.annualRainMm ?? null,
  };
}

function zoneOf({ where }: Pick<Asking, 'where'>): Zone | undefined {
  const name = typeof where?.place === 'object' ? where.place.timeZone : undefined;
  return name === undefined ? undefined : findZone(name);
}

type Place = Exclude<NonNullable<NonNullable<Asking['where']>['place']>, string>;

function placeOf({ where }: Pick<Asking, 'where'>): Place | undefined {
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

function bedOf({ where }: Pick<Asking, 'where'>): Bed {
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

function beyondOf({ beyond }: Pick<Asking, 'beyond'>, { latitude }: Site): Question['beyond'] {
  if (beyond === undefined) return null;
  if (beyond === 'seasonal-drift' && latitude === null) {
    throw new RequestError(
      'no-latitude',
      'The drift of the season depends on the latitude: send where.place.latitude, or let "beyond" be repeat-last-week.',
      [{ path: ['where', 'place', 'latitude'], detail: 'Is needed for seasonal-drift.' }],
    );
  }
  return beyond;
}
