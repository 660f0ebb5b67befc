import { MIN_YEARS, yearsTold } from '../../answers/ahead/past-soil.js';
import type { TableClimate } from '../../answers/climate/table-climate.js';
import type { MinimaTuning } from '../../answers/climate/tuned-minima.js';
import { climatologicalSeries } from '../../answers/forecast/extrapolation.js';
import type { QuestionBed } from '../../answers/question.js';
import type { Site } from '../../answers/soil/known-hours.js';
import { airDays } from '../../answers/windows/air-days.js';
import { addDays, daysBetween, type PlainDate, startOfDay, type Zone } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import type { Normals } from '../../climate/normals.js';
import { type Day, daysOf } from '../../readings/daily/days.js';
import { meanOfDays, type ReadSeries } from '../../readings/read-series.js';
import { longestJoinedMs, usualStepMs } from '../../readings/time/step.js';
import { gardenRefusal } from '../refusal-facts.js';
import { type CachedSeries, NOT_MEASURED, seriesCacheOf } from '../store/series-cache.js';
import type { AirDay, Bed, KeptSeries, Place, Store } from '../store/store.js';
import type { ReadingsToCome } from './bed-facts.js';
import { bedRows, type PlaceRecords } from './bed-records.js';
import { tunedAir } from './tuned-air.js';

/** Everything stored of a place, or of a bed in it, that a question about it needs. */
export interface BedInputs extends PlaceRecords {
  readonly bedMake: QuestionBed | null;
  /** The place's air and coming days, and what the bed's thermometers read. */
  readonly series: readonly ReadSeries[];
  /** The place's own, else the climate table's; null: neither is known. */
  readonly normals: Normals | null;
  /** Typical years, where the place's own are too few and it has no normals; null: they are not needed, or not known. */
  readonly typicalAir: ReadSeries | null;
  /** The climate that they come with; null likewise. */
  readonly climate: TableClimate | null;
  /** How the minima of the place's own air were moved; null: they were not. */
  readonly tuning: MinimaTuning | null;
  /** A note on readings of days to come, which are left out; null: there are none. */
  readonly toCome: ReadingsToCome | null;
}

/** Single readings are used this far back; before that their days suffice [d]. */
const BY_READING_DAYS = 60;

/** A bed and its place with all their series; undefined where it is not there. */
export async function bedInputsOf(
  store: Store,
  owner: string,
  id: string,
  nowMs: number,
): Promise<BedInputs | undefined> {
  const rows = await bedRows(store, owner, id, nowMs);
  return rows && inputsOfRows(store, owner, rows);
}

/** The series of a place or bed beside its rows: the same objects as long as the rows are the same. */
export async function inputsOfRows(store: Store, owner: string, rows: PlaceRecords): Promise<BedInputs> {
  const { bed, sourceNotes } = rows;
  const [{ series: air, normals, climate, tuning }, { series: measured, note }] = await Promise.all([
    placeSeries(store, owner, rows),
    bed ? bedSeries(store, owner, bed, rows) : NOT_MEASURED,
  ]);
  const notes = [...(air.length > 0 ? sourceNotes : []), ...(note ? [note] : [])];
  const bedMake = bed && {
    kind: bed.kind,
    cover: bed.cover,
    moisture: bed.moisture,
    shadePercent: bed.shadePercent,
    roomC: bed.roomC,
    wettedOn: null,
  };
  return {
    ...rows,
    bedMake,
    series: withNotes([...air, ...measured], notes),
    normals: normals ?? climate?.normals ?? null,
    typicalAir: climate?.airYears ?? null,
    climate,
    tuning,
    toCome: note,
  };
}

/**
 * The series for a question about a kept bed or place that brings none: the stored ones, else the place's climatological air.
 *
 * @throws {RequestError} `no-readings` where there is neither.
 */
export function seriesToGoBy(
  { series, normals, typicalAir, site, place, bed, toCome, failedSources }: BedInputs,
  nowMs: number,
): readonly ReadSeries[] {
  if (series.length > 0) return series;
  if (normals) return [usualAir(normals, nowMs, site, typicalAir ? 'climate-table' : 'past-years')];
  throw new RequestError(
    'no-readings',
    [
      gardenRefusal('no-readings.kept', { bed: bed?.id ?? null, place: place.id }),
      ...(toCome ? [toCome] : []),
      ...failedSources,
    ],
    failedSources.map((detail) => ({ detail })),
  );
}

/** Usual air up to an instant, in place of what nobody measured. */
export function usualAir(
  normals: Normals,
  nowMs: number,
  site: Site,
  basis: 'past-years' | 'climate-table',
): ReadSeries {
  const usual = climatologicalSeries(normals, nowMs, site);
  return { ...usual, origin: 'forecast', dayBasis: usual.days.map(() => basisCode(basis)) };
}

/** The climate of a place from the table, brought to a year or two of its own air; null where there is no table, or no station is near. */
export function climateHere(
  store: Store,
  place: Place,
  { zone }: Site,
  today: PlainDate,
  own: readonly ReadSeries[] = [],
): TableClimate | null {
  const { latitude, longitude, elevationM, lastFrostAround, firstFrostAround } = place;
  try {
    const ownAir = airDays(own.filter(({ origin }) => origin === 'measured'));
    const asked = { latitude, longitude, zone, elevationM, lastFrostAround, firstFrostAround, ownAir };
    return store.climateOf?.(asked, today) ?? null;
  } catch (error) {
    // A frost date that cannot be true is refused when it is sent.
    if (error instanceof RequestError) return null;
    throw error;
  }
}

/** A place's series, without a note of its source, and its normals. */
const placeSeries = (store: Store, owner: string, { place, site, today }: PlaceRecords): Promise<CachedSeries> =>
  seriesCacheOf(store).get(keyOf(owner, 'place', place, site.zone, today), async () => {
    const [air, coming, normals] = await Promise.all([
      store.air(owner, place.id),
      store.comingDays(owner, place.id),
      store.normals(owner, place.id),
    ]);
    // "Measured" days in the future are a slip, and would open a gap.
    const measured = air.filter(({ date }) => date <= today);
    const asMeasured = [
      ...airSeries(measured, 'measured', site.zone),
      ...airSeries(joined(coming?.days ?? [], measured), 'forecast', site.zone),
    ];
    const { series, tuning } = tunedAir(asMeasured, place);
    const isKnown = normals !== undefined || yearsTold(series) >= MIN_YEARS;
    return {
      series,
      normals: normals ?? null,
      climate: isKnown ? null : climateHere(store, place, site, today, series),
      tuning,
      note: null,
    };
  });

/** The readings of a bed's thermometers. */
const bedSeries = (store: Store, owner: string, bed: Bed, { site, today }: PlaceRecords): Promise<CachedSeries> =>
  seriesCacheOf(store).get(keyOf(owner, 'bed', bed, site.zone, today), async () => {
    const thermometers = await store.series(owner, bed.id);
    const read = await Promise.all(
      thermometers.map((one) => ofThermometer(store, owner, bed.id, one, site.zone, today)),
    );
    const toCome = thermometers.find(({ to }) => to > addDays(today, 1));
    return {
      series: read.flat(),
      normals: null,
      climate: null,
      tuning: null,
      note: toCome ? readingsToCome(bed.id, toCome.to, today) : null,
    };
  });

/** Revisions rise with every change, so that entries need no invalidation; zone and date decide what a day is. */
const keyOf = (owner: string, kind: 'place' | 'bed', { id, revision }: Place | Bed, zone: Zone, today: PlainDate) =>
  JSON.stringify([owner, kind, id, revision, zone.name, today]);

/** Forecast days are used up to the first gap of this length, counted from the last measured day [d]. */
const MAX_HOLE_DAYS = 14;

/** The forecast days that follow the known ones; later ones would open a gap. */
function joined(coming: readonly AirDay[], air: readonly AirDay[]): AirDay[] {
  let last = air.at(-1)?.date ?? coming[0]?.date;
  const end = coming.findIndex(({ date }) => {
    if (daysBetween(last!, date) > MAX_HOLE_DAYS) return true;
    if (date > last!) last = date;
    return false;
  });
  return coming.slice(0, end < 0 ? coming.length : end);
}

/** Days of air as a series; none where there are no days. A day known by one extreme alone says nothing. */
function airSeries(air: readonly AirDay[], origin: ReadSeries['origin'], zone: Zone): ReadSeries[] {
  const days = air.flatMap(({ date, min, mean, max }): Day[] => {
    const isWide = min !== null && max !== null;
    if (!isWide && mean === null) return [];
    return [{ date, min: isWide ? min : null, mean, max: isWide ? max : null, readings: 0, complete: true }];
  });
  return days.length === 0 ? [] : [daily(days, { medium: 'air', probeDepthCm: null, origin }, zone)];
}

const readingsToCome = (bed: string, lastDate: PlainDate, todayDate: PlainDate): ReadingsToCome => ({
  code: 'readings-to-come',
  params: { bed, lastDate, todayDate, deleteFrom: addDays(todayDate, 1) },
});

/** Lays notes over the first series; the same object as before for the same notes. */
function withNotes([first, ...rest]: readonly ReadSeries[], notes: readonly Note[]): readonly ReadSeries[] {
  if (!first) return [];
  if (notes.length === 0) return [first, ...rest];
  const key = JSON.stringify(notes);
  const before = noted.get(first);
  const series = before?.key === key ? before.series : { ...first, warnings: [...first.warnings, ...notes] };
  noted.set(first, { key, series });
  return [series, ...rest];
}
const noted = new WeakMap<ReadSeries, { readonly key: string; readonly series: ReadSeries }>();

/** The readings of a thermometer: its days, and every reading of the last ones. */
async function ofThermometer(
  store: Store,
  owner: string,
  bed: string,
  { medium, probeDepthCm, to }: KeptSeries,
  zone: Zone,
  today: PlainDate,
): Promise<ReadSeries[]> {
  const shape = { medium, probeDepthCm, origin: 'measured' } as const;
  const lately = addDays(to < today ? to : today, -BY_READING_DAYS);
  const [days, readings] = await Promise.all([
    store.readingDays(owner, bed, shape, { to: addDays(lately, -1) }),
    store.readings(owner, bed, shape, {
      fromMs: startOfDay(lately, zone),
      // A logger's clock may be a day ahead of ours. The bound is that of a date, so that it holds all day.
      toMs: startOfDay(addDays(today, 2), zone),
    }),
  ]);
  const whole = days.filter((day) => day.complete);
  const usualMs = usualStepMs(readings.atMs);
  return [
    ...(whole.length > 0 ? [daily(whole, shape, zone)] : []),
    ...(readings.atMs.length > 1
      ? [
          {
            ...empty(shape, zone),
            readings,
            ...daysOf(readings, zone, longestJoinedMs(usualMs)),
            usualStepMs: usualMs,
          },
        ]
      : []),
  ];
}

type Shape = Pick<ReadSeries, 'medium' | 'probeDepthCm' | 'origin'>;

const empty = (shape: Shape, zone: Zone) =>
  ({
    ...shape,
    unit: 'C',
    zone,
    readings: null,
    dayBasis: [],
    dayPlusMinusK: [],
    usualStepMs: null,
    warnings: [],
  }) as const;

const daily = (days: readonly Day[], shape: Shape, zone: Zone): ReadSeries => ({
  ...empty(shape, zone),
  days,
  meanC: meanOfDays(days),
});
