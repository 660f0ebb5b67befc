import { addDays, dateAt, fixedZone, type PlainDate, startOfDay, type Zone } from '../../basics/calendar.js';
import type { Changes, DateRange, InstantRange, KeptSeries, Probe } from '../../garden/store/store.js';
import { type Day, daysOf } from '../../readings/daily/days.js';
import type { Readings } from '../../readings/readings.js';
import { longestJoinedMs, usualStepMs } from '../../readings/time/step.js';
import type { Query } from '../database.js';
import { insertMany } from '../insert-many.js';
import { mergeReadings } from '../merge-readings.js';
import { packReadings, unpackReadings } from '../pack-readings.js';

/** Days read or written at a time: a few milliseconds of work on one-minute readings, after which other work runs. */
const DAYS_AT_ONCE = 20;
/** Bound of a batch of denser readings: a batch ends with the day that reaches this many [readings]. */
const MAX_READINGS_AT_ONCE = 50_000;
/** Before and after all dates, as text is ordered. */
const FIRST = '' as PlainDate;
const LAST = '9999-99-99' as PlainDate;
const AT_SEED_CM = -1;

/** One thermometer of one bed. */
export interface SeriesKey extends Probe {
  readonly owner: string;
  readonly bed: string;
}

interface DayRow {
  readonly date: PlainDate;
  readonly readings: number;
  readonly min_c: number;
  readonly mean_c: number | null;
  readonly max_c: number;
  readonly complete: number;
}

interface PackRow {
  readonly date: PlainDate;
  readonly readings: number;
  readonly packed: Uint8Array | ArrayBuffer;
}

type Ask = Pick<Query, 'all'>;

const OF_SERIES = 'owner = $1 and bed = $2 and medium = $3 and depth_cm = $4';
const valuesOf = ({ owner, bed, medium, probeDepthCm }: SeriesKey) => [owner, bed, medium, probeDepthCm ?? AT_SEED_CM];

/** The thermometers of a bed, with the dates and the number of their readings. */
export async function seriesOf(ask: Ask, owner: string, bed: string): Promise<KeptSeries[]> {
  const rows = await ask.all<{ medium: Probe['medium']; depth: number; first: PlainDate; last: PlainDate; n: string }>(
    `select medium, depth_cm as depth, min(date) as first, max(date) as last, sum(readings) as n
     from reading_days where owner = $1 and bed = $2 group by medium, depth_cm order by medium, depth_cm`,
    [owner, bed],
  );
  return rows.map(({ medium, depth, first, last, n }) => ({
    medium,
    probeDepthCm: depth === AT_SEED_CM ? null : depth,
    from: first,
    to: last,
    readings: Number(n),
  }));
}

/** True when one thermometer has readings. */
export const hasSeries = async (ask: Ask, key: SeriesKey): Promise<boolean> =>
  (await ask.all(`select date from reading_days where ${OF_SERIES} limit 1`, valuesOf(key))).length > 0;

/** The days of one thermometer, without its readings. */
export async function daysOfSeries(ask: Ask, key: SeriesKey, { from = FIRST, to = LAST }: DateRange): Promise<Day[]> {
  const rows = await ask.all<DayRow>(
    `select date, readings, min_c, mean_c, max_c, complete
     from reading_days where ${OF_SERIES} and date >= $5 and date <= $6 order by date`,
    [...valuesOf(key), from, to],
  );
  return rows.map(({ date, readings, min_c, mean_c, max_c, complete }) => ({
    date,
    min: min_c,
    mean: mean_c,
    max: max_c,
    readings,
    complete: complete === 1,
  }));
}

/** The readings of one thermometer, read a few days at a time so that other work can run between. */
export async function readingsOfSeries(ask: Ask, key: SeriesKey, range: InstantRange): Promise<Readings> {
  const { from, to } = datesAround(range);
  const packs: PackRow[] = [];
  for (let after = from, full = true; full; after = packs.at(-1)?.date ?? LAST) {
    const rows = await ask.all<PackRow>(
      `select date, readings, packed from reading_days
       where ${OF_SERIES} and date > $5 and date <= $6 order by date limit ${DAYS_AT_ONCE}`,
      [...valuesOf(key), after, to],
    );
    packs.push(...rows);
    full = rows.length === DAYS_AT_ONCE;
  }
  const all = unpackReadings(packs);
  const first = firstFrom(all.atMs, range.fromMs ?? -Infinity);
  const end = firstFrom(all.atMs, range.toMs ?? Infinity);
  return slice(all, first, end);
}

/** Merges readings into those of one thermometer. */
export async function putInSeries(query: Query, key: SeriesKey, zone: Zone, coming: Readings): Promise<Changes> {
  const { atMs } = coming;
  const total = { added: 0, unchanged: 0, replaced: 0 };
  for (let first = 0; first < atMs.length; ) {
    const from = dateAt(atMs[first]!, zone);
    const last = dateAt(atMs[Math.min(first + MAX_READINGS_AT_ONCE, atMs.length) - 1]!, zone);
    const until = Math.min(startOfDay(addDays(from, DAYS_AT_ONCE), zone), startOfDay(addDays(last, 1), zone));
    const end = firstFrom(atMs, until);
    const some = slice(coming, first, end);
    await rewriteDays(query, key, zone, { from, to: dateAt(atMs[end - 1]!, zone) }, (before) => {
      const { merged, changes } = mergeReadings(before, some);
      total.added += changes.added;
      total.unchanged += changes.unchanged;
      total.replaced += changes.replaced;
      return merged;
    });
    first = end;
  }
  return total;
}

/** Deletes the readings of one thermometer within a range and returns their number. */
export async function deleteFromSeries(query: Query, key: SeriesKey, zone: Zone, range: InstantRange): Promise<number> {
  const { fromMs = -Infinity, toMs = Infinity } = range;
  const { from, to } = datesAround(range);
  const rows = await query.all<{ date: PlainDate }>(
    `select date from reading_days where ${OF_SERIES} and date > $5 and date <= $6 order by date`,
    [...valuesOf(key), from, to],
  );
  let deleted = 0;
  for (let day = 0; day < rows.length; day += DAYS_AT_ONCE) {
    const dates = rows.slice(day, day + DAYS_AT_ONCE);
    const some = { from: dates[0]!.date, to: dates.at(-1)!.date };
    await rewriteDays(query, key, zone, some, (before) => {
      // The days around these were read too; nothing of them is deleted here.
      const first = firstFrom(before.atMs, Math.max(fromMs, startOfDay(some.from, zone)));
      const end = firstFrom(before.atMs, Math.min(toMs, startOfDay(addDays(some.to, 1), zone)));
      if (end <= first) return before;
      deleted += end - first;
      return without(before, first, end);
    });
  }
  return deleted;
}

/** Sorts all readings of a bed into the days of another zone. */
export async function rezoneBed(query: Query, owner: string, bed: string, zone: Zone): Promise<void> {
  for (const { medium, probeDepthCm } of await seriesOf(query, owner, bed)) {
    const key = { owner, bed, medium, probeDepthCm };
    const all = await readingsOfSeries(query, key, {});
    await query.run(`delete from reading_days where ${OF_SERIES}`, valuesOf(key));
    await putInSeries(query, key, zone, all);
  }
}

/**
 * Changes the readings of some dates and writes the days that differ. A row is one day at the place: its minimum, mean
 * and maximum from `readings/daily/days.ts`, and its readings packed.
 *
 * A day's mean includes the lines to the readings before and after it, so the nearest day on either side may change
 * too; its mean in turn needs one more day.
 */
async function rewriteDays(
  query: Query,
  key: SeriesKey,
  zone: Zone,
  { from, to }: { from: PlainDate; to: PlainDate },
  change: (before: Readings) => Readings,
): Promise<void> {
  const of = valuesOf(key);
  const rows = await query.all<DayRow & PackRow>(
    `select date, readings, min_c, mean_c, max_c, complete, packed from reading_days
     where ${OF_SERIES}
       and date >= coalesce((select min(date) from (
         select date from reading_days where ${OF_SERIES} and date < $5 order by date desc limit 2) as earlier), $5)
       and date <= coalesce((select max(date) from (
         select date from reading_days where ${OF_SERIES} and date > $6 order by date limit 2) as later), $6)
     order by date`,
    [...of, from, to],
  );
  const old = new Map(rows.map((row) => [row.date, row]));
  const dates = [...old.keys()];
  const first = dates.findLast((date) => date < from) ?? from;
  const last = dates.find((date) => date > to) ?? to;

  const readings = change(unpackReadings(rows));
  const { days } = daysOf(readings, zone, longestJoinedMs(usualStepMs(readings.atMs)));
  const changed: (string | number | null | Uint8Array)[][] = [];
  let start = 0;
  for (const day of days) {
    const end = start + day.readings;
    if (day.date >= first && day.date <= last) {
      const packed = packReadings(slice(readings, start, end));
      const row = old.get(day.date);
      if (!row || !isSame(row, day, packed)) {
        changed.push([...of, day.date, day.readings, day.min!, day.mean, day.max!, day.complete ? 1 : 0, packed]);
      }
      old.delete(day.date);
    }
    start = end;
  }
  for (const date of old.keys()) {
    if (date < first || date > last) continue;
    await query.run(`delete from reading_days where ${OF_SERIES} and date = $5`, [...of, date]);
  }
  await insertMany(
    query,
    'reading_days (owner, bed, medium, depth_cm, date, readings, min_c, mean_c, max_c, complete, packed)',
    changed,
    `on conflict (owner, bed, medium, depth_cm, date) do update set
       readings = excluded.readings, min_c = excluded.min_c, mean_c = excluded.mean_c, max_c = excluded.max_c,
       complete = excluded.complete, packed = excluded.packed`,
  );
}

const isSame = (row: DayRow & PackRow, day: Day, packed: Uint8Array): boolean =>
  row.mean_c === day.mean &&
  row.complete === (day.complete ? 1 : 0) &&
  Buffer.compare(bytesOf(row.packed), packed) === 0;

const bytesOf = (packed: Uint8Array | ArrayBuffer): Uint8Array =>
  packed instanceof Uint8Array ? packed : new Uint8Array(packed);

const slice = ({ atMs, valueC, basis }: Readings, from: number, to: number): Readings => ({
  atMs: atMs.subarray(from, to),
  valueC: valueC.subarray(from, to),
  basis: basis.subarray(from, to),
});

function without({ atMs, valueC, basis }: Readings, from: number, to: number): Readings {
  const remaining = atMs.length - (to - from);
  const others = {
    atMs: new Float64Array(remaining),
    valueC: new Float64Array(remaining),
    basis: new Uint8Array(remaining),
  };
  others.atMs.set(atMs.subarray(0, from));
  others.atMs.set(atMs.subarray(to), from);
  others.valueC.set(valueC.subarray(0, from));
  others.valueC.set(valueC.subarray(to), from);
  others.basis.set(basis.subarray(0, from));
  others.basis.set(basis.subarray(to), from);
  return others;
}

/** Index of the first instant not before the given one. */
function firstFrom(atMs: Float64Array, instantMs: number): number {
  let [low, high] = [0, atMs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (atMs[middle]! < instantMs) low = middle + 1;
    else high = middle;
  }
  return low;
}

const UTC = fixedZone(0);

/** Dates that contain a range of instants in any zone: after the first, up to the last. */
const datesAround = ({ fromMs = -Infinity, toMs = Infinity }: InstantRange): { from: PlainDate; to: PlainDate } => ({
  from: Number.isFinite(fromMs) ? addDays(dateAt(fromMs, UTC), -2) : FIRST,
  to: Number.isFinite(toMs) ? addDays(dateAt(toMs, UTC), 1) : LAST,
});
