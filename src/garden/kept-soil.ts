import { usualSeries } from '../answers/beyond.js';
import type { Site } from '../answers/known-hours.js';
import type { Bed as QuestionBed } from '../answers/question.js';
import {
  addDays,
  DAY_MS,
  dateAt,
  daysBetween,
  type PlainDate,
  startOfDay,
  type Zone,
  zoneNamed,
} from '../basics/calendar.js';
import { type Note, RequestError } from '../basics/errors.js';
import { basisCode } from '../basics/series.js';
import type { DailyMinima } from '../climate/frost-dates.js';
import type { Normals } from '../climate/normals.js';
import { type Day, daysOf } from '../readings/days.js';
import { meanOfDays, type ReadSeries } from '../readings/read-series.js';
import { longestJoinedMs, usualStepMs } from '../readings/step.js';
import { sourceNote } from './source-note.js';
import type { AirDay, Bed, KeptSeries, Place, Store } from './store.js';

/** What is kept of a place, or of a bed in it, as a question about it needs it. */
export interface Kept {
  readonly place: Place;
  /** null: a place alone was asked for. */
  readonly bed: Bed | null;
  readonly site: Site;
  readonly bedMake: QuestionBed | null;
  /** The place's air and coming days, and what the bed's thermometers read. */
  readonly series: readonly ReadSeries[];
  readonly normals: Normals | null;
}

/** Readings are looked at one by one so far back; before that their days say enough [d]. */
const BY_READING_DAYS = 60;

/** What is kept of a place; undefined where it is not there. */
export async function keptPlace(store: Store, owner: string, id: string, nowMs: number): Promise<Kept | undefined> {
  const place = await store.place(owner, id);
  return place && { place, bed: null, bedMake: null, ...(await ofPlace(store, owner, place, nowMs)) };
}

/** What is kept of a bed and of its place; undefined where it is not there. */
export async function keptBed(store: Store, owner: string, id: string, nowMs: number): Promise<Kept | undefined> {
  const bed = await store.bed(owner, id);
  const place = bed && (await store.place(owner, bed.place));
  if (!bed || !place) return undefined;
  const known = await ofPlace(store, owner, place, nowMs);
  const thermometers = await store.series(owner, id);
  const read = await Promise.all(
    thermometers.map((one) => ofThermometer(store, owner, id, one, known.site.zone, nowMs)),
  );
  const today = dateAt(nowMs, known.site.zone);
  const toCome = thermometers.find(({ to }) => to > addDays(today, 1));
  const series = [...known.series, ...read.flat()];
  const { kind, cover, moisture, shadePercent, roomC } = bed;
  return {
    ...known,
    place,
    bed,
    bedMake: { kind, cover, moisture, shadePercent, roomC, wettedOn: null },
    series: toCome ? withNote(series, readingsToCome(id, toCome.to, today)) : series,
  };
}

/**
 * What a question about a kept bed or place goes by where it brings nothing of its own: what is kept, else the place's usual air.
 *
 * @throws {RequestError} `no-readings` where there is neither.
 */
export function seriesToGoBy({ series, normals, site, place, bed }: Kept, nowMs: number): readonly ReadSeries[] {
  if (series.length > 0) return series;
  if (normals) return [insteadOfMeasured(usualSeries(normals, nowMs, site))];
  throw new RequestError(
    'no-readings',
    `No temperatures are kept of ${bed ? `the bed "${bed.id}" or its place` : 'the place'} "${place.id}". POST some to /v1/places/${place.id}/air${bed ? ` or /v1/beds/${bed.id}/readings` : ''}, or send "temperatures".`,
  );
}

/** A usual year's air in place of what nobody measured. */
const insteadOfMeasured = (usual: ReadSeries): ReadSeries => ({
  ...usual,
  origin: 'forecast',
  dayBasis: usual.days.map(() => basisCode('past-years')),
});

async function ofPlace(
  store: Store,
  owner: string,
  place: Place,
  nowMs: number,
): Promise<Pick<Kept, 'site' | 'series' | 'normals'>> {
  const [air, coming, normals, source] = await Promise.all([
    store.air(owner, place.id),
    store.comingDays(owner, place.id),
    store.normals(owner, place.id),
    store.sourceState(owner, place.id),
  ]);
  const note = sourceNote(source, nowMs);
  const today = dateAt(nowMs, zoneNamed(place.timeZone));
  // What is told of as measured on days to come is a slip, and would tear a hole.
  const measured = air.filter(({ date }) => date <= today);
  const { latitude, longitude, annualRainMm } = place;
  const zone = zoneNamed(place.timeZone);
  return {
    site: { zone, latitude, longitude, annualRainMm },
    series: [
      ...airSeries(measured, 'measured', zone),
      ...airSeries(joined(coming?.days ?? [], measured), 'forecast', zone),
    ].map((one, i) => (note && i === 0 ? { ...one, warnings: [note] } : one)),
    normals: normals ?? null,
  };
}

/** Coming days are of use up to the first hole of so many days, counted from the last one measured [d]. */
const LONGEST_HOLE_DAYS = 14;

/** The coming days that follow on what is known; others would only tear a hole. */
function joined(coming: readonly AirDay[], air: readonly AirDay[]): AirDay[] {
  let last = air.at(-1)?.date ?? coming[0]?.date;
  const end = coming.findIndex(({ date }) => {
    if (daysBetween(last!, date) > LONGEST_HOLE_DAYS) return true;
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

/** A logger's clock may be so far ahead of ours. */
const CLOCKS_DIFFER_MS = DAY_MS;

const readingsToCome = (bed: string, to: PlainDate, today: PlainDate): Note => ({
  code: 'readings-to-come',
  text: `Readings of days to come, up to ${to}, are kept of this bed and left out; today is ${today}. If a logger's clock or a year is wrong, DELETE /v1/beds/${bed}/readings?from=${addDays(today, 1)} and send them again.`,
});

const withNote = ([first, ...rest]: readonly ReadSeries[], note: Note): ReadSeries[] =>
  first ? [{ ...first, warnings: [...first.warnings, note] }, ...rest] : [];

/** What a thermometer read: its days, and of the last of them each reading. */
async function ofThermometer(
  store: Store,
  owner: string,
  bed: string,
  { medium, probeDepthCm, to }: KeptSeries,
  zone: Zone,
  nowMs: number,
): Promise<ReadSeries[]> {
  const shape = { medium, probeDepthCm, origin: 'measured' } as const;
  const today = dateAt(nowMs, zone);
  const lately = addDays(to < today ? to : today, -BY_READING_DAYS);
  const [days, readings] = await Promise.all([
    store.readingDays(owner, bed, shape, { to: addDays(lately, -1) }),
    store.readings(owner, bed, shape, { fromMs: startOfDay(lately, zone), toMs: nowMs + CLOCKS_DIFFER_MS }),
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

/**
 * All that an answer from what is kept changes with: a bed's revision is raised by its readings, sowings, counts, plans and
 * the lots that were sown in it, a place's by its air.
 */
export const keptInputs = ({ place, bed, series }: Kept, today: PlainDate): object => ({
  place: [place.id, place.revision],
  bed: bed && [bed.id, bed.revision],
  today,
  notes: series.flatMap(({ warnings }) => warnings.map(({ code }) => code)),
});

/** The air's minima that are kept, day by day from the first one on; NaN where none is. */
export function minimaOf({ series }: Kept): DailyMinima | null {
  const air = series.find(({ medium, origin }) => medium === 'air' && origin === 'measured');
  const firstDate = air?.days[0]?.date;
  if (!air || firstDate === undefined) return null;
  const minC = new Float64Array(daysBetween(firstDate, air.days.at(-1)!.date) + 1).fill(Number.NaN);
  for (const { date, min } of air.days) minC[daysBetween(firstDate, date)] = min ?? Number.NaN;
  return { firstDate, minC };
}
