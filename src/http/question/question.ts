import { DEFAULT_DEPTH_CM, defaultBed, type Lot, type Question, type QuestionBed } from '../../answers/question.js';
import type { Site } from '../../answers/soil/known-hours.js';
import type { SoilQuestion } from '../../answers/soil/soil-temperatures.js';
import type { WindowQuestion } from '../../answers/windows/judged-dates.js';
import { addDays, dateAt, findZone, type PlainDate, type Zone } from '../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../basics/errors.js';
import { fieldFact } from '../../basics/field-facts.js';
import type { ForecastBody, ForecastQuery } from '../../contract/forecast.js';
import { keptRefusal } from '../../contract/request/refusal-facts.js';
import type { SoilQuery } from '../../contract/soil.js';
import type { WindowQuery } from '../../contract/windows.js';
import { type BedInputs, seriesToGoBy, usualAir } from '../../garden/bed/bed-inputs.js';
import { chosenCrop } from '../../germination/crop-choice.js';
import { type ReadSeries, readSeries, zoneOfStamps } from '../../readings/read-series.js';
import { reportOf, type SeriesReport } from '../../readings/report.js';
import type { FileRead } from '../../readings/text/rows-read.js';
import type { Locale } from './locale.js';

/** Stored data of the place or bed that a question names, and the instant of the question. */
export interface Known {
  readonly kept: BedInputs | null;
  /** The place that the question describes by name or coordinates; left out: it describes none. */
  readonly locale?: Locale | undefined;
  readonly now: Date;
}

/** A series sent with the question, and the report on it. */
export interface ReadSeriesSet {
  readonly series: ReadSeries;
  readonly report: SeriesReport;
}

/** All series of a JSON body. */
export function readBody(
  temperatures: ForecastBody['temperatures'],
  asking: Pick<ForecastQuery, 'where'>,
  known: Known,
): ReadSeriesSet[] {
  const zone = zoneOf(asking, known) ?? temperatures.map(zoneOfStamps).find((found) => found !== undefined);
  return temperatures.map((series, i) => {
    const one = readSeries(series, zone, ['temperatures', i]);
    return { series: one, report: reportOf(one, series.readings?.length ?? series.daily!.length) };
  });
}

/** The one series of a file. */
export const readFile = ({ series, rows, file }: FileRead): ReadSeriesSet[] => [
  { series, report: reportOf(series, rows, file) },
];

/** Builds the question of sowing windows. */
export function windowQuestionOf(asking: WindowQuery, read: readonly ReadSeriesSet[], known: Known): WindowQuestion {
  const crop = chosenCrop(asking.crop);
  const site = siteOf(asking, read, known);
  const from = asking.from ?? dateAt(known.now.getTime(), site.zone);
  const { share, shareIfHeld, sureness, sowing, lot } = asking;
  return {
    crop,
    site,
    bed: bedOf(asking, known),
    depthCm: sowing.depthCm ?? crop.sowingDepthCm ?? DEFAULT_DEPTH_CM,
    time: sowing.time,
    lot: lotOf(lot),
    timeFactor: asking.timeFactor ?? null,
    series: seriesOf(asking, read, known),
    understood: read.map((one) => one.report),
    from,
    to: asking.to ?? addDays(from, 364),
    criteria: { share, shareIfHeld, maxDays: asking.maxDays ?? crop.maxDays, sureness },
    prefer: asking.prefer,
    judge: asking.judge,
    ...climateIn(known),
  };
}

/** What is known of the climate, beside past years: of a stored place, or of the one described. */
function climateIn({ kept, locale }: Known): Pick<Question, 'normals' | 'typicalAir'> {
  if (kept) return { normals: kept.normals, typicalAir: kept.typicalAir };
  const climate = locale?.climate;
  return { normals: climate?.normals ?? null, typicalAir: climate?.airYears ?? null };
}

/** What a question without temperatures of its own rests on. */
export function climateAsked(known: Known): Pick<Question, 'series' | 'normals' | 'typicalAir' | 'site'> {
  const { kept, locale } = known;
  return { series: kept?.series ?? [], site: (kept ?? locale)!.site, ...climateIn(known) };
}

/** The same for what lies ahead: beside temperatures that are kept, typical years are used only where they are asked for. */
function climateAhead(
  { beyond }: Pick<ForecastQuery, 'beyond'>,
  known: Known,
): Pick<Question, 'normals' | 'typicalAir'> {
  const climate = climateIn(known);
  const isLeftOut = climate.typicalAir && (known.kept?.series.length ?? 0) > 0 && beyond !== 'climate-table';
  return isLeftOut ? { normals: null, typicalAir: null } : climate;
}

/** The time zone of a question. @throws {RequestError} for an unknown crop. */
export function zoneOfQuestion(
  asking: Pick<ForecastQuery, 'where'> & { crop?: ForecastQuery['crop'] | undefined },
  known: Known,
): Zone | undefined {
  if (asking.crop !== undefined) chosenCrop(asking.crop);
  return zoneOf(asking, known);
}

/** Builds the question of a forecast. */
export function questionOf(asking: ForecastQuery, read: readonly ReadSeriesSet[], known: Known): Question {
  const { sowing, lot, standFactor } = asking;
  const site = siteOf(asking, read, known);
  return {
    crop: chosenCrop(asking.crop),
    site,
    zoneFromStamps: zoneOf(asking, known) === undefined,
    bed: bedOf(asking, known),
    sowing: { date: sowing.date, time: sowing.time, depthCm: sowing.depthCm ?? null, seeds: sowing.seeds ?? null },
    lot: lotOf(lot),
    timeFactor: asking.timeFactor ?? null,
    standFactor: typeof standFactor === 'number' ? { from: standFactor, to: standFactor } : (standFactor ?? null),
    learned: null,
    countDays: asking.countDays ?? null,
    series: seriesOf(asking, read, known),
    understood: read.map((one) => one.report),
    beyond: beyondOf(asking, site),
    ...climateAhead(asking, known),
    judgesDate: true,
  };
}

type Dates = Pick<SoilQuestion, 'from' | 'to'>;

const datesOf = ({ from, to }: Pick<SoilQuery, 'from' | 'to'>): Dates => ({ from: from ?? null, to: to ?? null });

/** Stored data may cover years, so without dates the week before and the week after today are meant. */
function datesAround(asked: Pick<SoilQuery, 'from' | 'to'>, series: readonly ReadSeries[], today: PlainDate): Dates {
  const to = asked.to ?? addDays(asked.from ?? today, asked.from ? 2 * AROUND_DAYS : AROUND_DAYS);
  const first = series.map(({ days }) => days[0]!.date).sort()[0];
  if (first && asked.from === undefined && to < first) {
    throw notUnderstood([{ path: ['from'], detail: fieldFact('field.from-needed', { firstDate: first, to }) }]);
  }
  const from = asked.from ?? [addDays(to, -2 * AROUND_DAYS), ...(first ? [first] : [])].sort().at(-1)!;
  return { from, to };
}
const AROUND_DAYS = 7;

/** Builds the question of soil temperatures. */
export function soilQuestionOf(asking: SoilQuery, read: readonly ReadSeriesSet[], known: Known): SoilQuestion {
  const site = siteOf(asking, read, known);
  const crop = asking.crop === undefined ? null : chosenCrop(asking.crop);
  const series = seriesOf(asking, read, known);
  return {
    site,
    bed: bedOf(asking, known),
    depthCm: asking.depthCm ?? asking.sowing?.depthCm ?? crop?.sowingDepthCm ?? DEFAULT_DEPTH_CM,
    ...(known.kept ? datesAround(asking, series, dateAt(known.now.getTime(), site.zone)) : datesOf(asking)),
    step: asking.step,
    series,
    understood: read.map((one) => one.report),
    beyond: beyondOf(asking, site),
    ...climateAhead(asking, known),
  };
}

const lotOf = (lot: ForecastQuery['lot']): Lot | null =>
  lot
    ? {
        germinationPercent: lot.germinationPercent ?? null,
        testedOn: lot.testedOn ?? null,
        hotLimitShiftC: lot.hotLimitShiftC,
      }
    : null;

function siteOf(asking: Pick<ForecastQuery, 'where'>, read: readonly ReadSeriesSet[], known: Known): Site {
  if (known.kept) return known.kept.site;
  if (known.locale) return known.locale.site;
  const place = placeOf(asking);
  const zone = zoneOf(asking, known) ?? read[0]?.series.zone;
  if (!zone) {
    throw new RequestError('time-zone-needed', keptRefusal('time-zone-needed.question'), [
      { path: ['where', 'place', 'timeZone'], detail: keptRefusal('time-zone-needed.question.field') },
    ]);
  }
  return {
    zone,
    latitude: place?.latitude ?? null,
    longitude: place?.longitude ?? null,
    annualRainMm: place?.annualRainMm ?? null,
  };
}

function zoneOf({ where }: Pick<ForecastQuery, 'where'>, { kept, locale }: Known): Zone | undefined {
  const known = kept ?? locale;
  if (known) return known.site.zone;
  const name = placeOf({ where })?.timeZone;
  return name === undefined ? undefined : findZone(name);
}

type Place = Exclude<NonNullable<NonNullable<ForecastQuery['where']>['place']>, string>;

const placeOf = ({ where }: Pick<ForecastQuery, 'where'>): Place | undefined =>
  typeof where?.place === 'object' ? where.place : undefined;

function bedOf({ where }: Pick<ForecastQuery, 'where'>, { kept }: Known): QuestionBed {
  if (typeof where?.bed === 'object') return { ...where.bed, wettedOn: where.bed.wettedOn ?? null };
  return kept?.bedMake ?? defaultBed;
}

/** Stored series overlaid with those sent; without either, the place's climatological air. */
function seriesOf(
  asking: Pick<ForecastQuery, 'where'>,
  read: readonly ReadSeriesSet[],
  known: Known,
): readonly ReadSeries[] {
  const sent = read.map((one) => one.series);
  const { kept, locale, now } = known;
  const isIndoors = bedOf(asking, known).kind === 'indoors';
  if (locale?.climate && sent.length === 0 && !isIndoors)
    return [usualAir(locale.climate.normals, now.getTime(), locale.site, 'climate-table')];
  if (!kept) return sent;
  const isEnough = sent.length > 0 || isIndoors;
  return isEnough ? [...kept.series, ...sent] : seriesToGoBy(kept, now.getTime());
}

function beyondOf({ beyond }: Pick<ForecastQuery, 'beyond'>, { latitude }: Site): Question['beyond'] {
  // Typical years are used wherever they come with the question.
  if (beyond === undefined || beyond === 'climate-table') return null;
  if (beyond === 'seasonal-drift' && latitude === null) {
    throw new RequestError('no-latitude', keptRefusal('no-latitude.drift'), [
      { path: ['where', 'place', 'latitude'], detail: keptRefusal('no-latitude.drift.field') },
    ]);
  }
  return beyond;
}
