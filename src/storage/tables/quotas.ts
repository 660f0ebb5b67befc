import { QuotaError, type QuotaName, type Quotas, type Usage } from '../../garden/store/quotas.js';
import type { Query } from '../database.js';
import { daysInYear, unpackAirYear } from '../pack-air.js';

const BYTES_PER_MEGABYTE = 1_000_000;
/**
 * Bytes that count against the quota: a reading is an instant and a value as doubles, a day of air three values and its
 * date.
 */
export const BYTES_PER_READING = 16;
export const BYTES_PER_AIR_DAY = 34;

type Ask = Pick<Query, 'all'>;
type CountedName = Extract<QuotaName, 'places' | 'beds' | 'sowings' | 'lots' | 'plans' | 'subscriptions'>;

const isCounted = (name: QuotaName): name is CountedName => !['thermometers', 'devices', 'megabytes'].includes(name);

async function numberFrom(ask: Ask, sql: string, values: readonly string[]): Promise<number> {
  const [row] = await ask.all<{ n: number | string | null }>(sql, values);
  return Number(row?.n ?? 0);
}

const countOf = (ask: Ask, name: CountedName, owner: string): Promise<number> =>
  numberFrom(ask, `select count(*) as n from ${name} where owner = $1`, [owner]);

const thermometersOf = (ask: Ask, owner: string, bed: string): Promise<number> =>
  numberFrom(
    ask,
    'select count(*) as n from (select distinct medium, depth_cm from reading_days where owner = $1 and bed = $2) as t',
    [owner, bed],
  );

/** Bytes of an owner's readings and air, counted row by row: 1 ms for a year of one-minute readings. */
async function countBytes(ask: Ask, owner: string): Promise<number> {
  const readings = await numberFrom(ask, 'select sum(readings) as n from reading_days where owner = $1', [owner]);
  const days = await airDaysIn(ask, owner);
  return BYTES_PER_READING * readings + BYTES_PER_AIR_DAY * days;
}

/** The stored byte count; counts rows when an earlier version of the service has stored none. */
async function bytesOf(ask: Ask, owner: string): Promise<number> {
  const [row] = await ask.all<{ bytes: number | null }>('select bytes from owners where owner = $1', [owner]);
  return row?.bytes ?? (await countBytes(ask, owner));
}

/**
 * Adds to the stored byte count of an owner's readings and air, within the transaction that changes them.
 *
 * @throws QuotaError when they exceed the quota; the transaction then rolls back.
 */
export async function addBytes(query: Query, quotas: Quotas, owner: string, bytes: number): Promise<void> {
  if (bytes === 0) return;
  const [row] = await query.all<{ bytes: number }>(
    'update owners set bytes = bytes + $2 where owner = $1 and bytes is not null returning bytes',
    [owner, bytes],
  );
  const total = row?.bytes ?? (await countBytes(query, owner));
  if (!row) await query.run('update owners set bytes = $2 where owner = $1', [owner, total]);
  const limit = quotas.megabytes;
  if (bytes > 0 && total > limit * BYTES_PER_MEGABYTE) {
    throw new QuotaError('megabytes', limit, Math.ceil(total / BYTES_PER_MEGABYTE));
  }
}

/** Number of readings of the beds that a condition selects. */
export const readingsIn = (
  ask: Ask,
  where: 'bed = $2' | 'bed in (select id from beds where owner = $1 and place = $2)',
  of: readonly [owner: string, id: string],
): Promise<number> => numberFrom(ask, `select sum(readings) as n from reading_days where owner = $1 and ${where}`, of);

/** Number of an owner's days of air, of all places or of one. */
export async function airDaysIn(ask: Ask, owner: string, place?: string): Promise<number> {
  const years = await ask.all<{ year: number; packed: Uint8Array | ArrayBuffer }>(
    `select year, packed from air_years where owner = $1 ${place === undefined ? '' : 'and place = $2'}`,
    place === undefined ? [owner] : [owner, place],
  );
  return years.reduce((sum, { year, packed }) => sum + daysInYear(unpackAirYear(year, packed)), 0);
}

/** An owner's use of each quota. */
export async function usageOf(ask: Ask, owner: string): Promise<Usage> {
  return {
    places: await countOf(ask, 'places', owner),
    beds: await countOf(ask, 'beds', owner),
    sowings: await countOf(ask, 'sowings', owner),
    lots: await countOf(ask, 'lots', owner),
    plans: await countOf(ask, 'plans', owner),
    subscriptions: await countOf(ask, 'subscriptions', owner),
    thermometers: await numberFrom(
      ask,
      `select max(n) as n from (
         select count(distinct medium || ' ' || cast(depth_cm as text)) as n
         from reading_days where owner = $1 group by bed) as by_bed`,
      [owner],
    ),
    devices: 0,
    megabytes: (await bytesOf(ask, owner)) / BYTES_PER_MEGABYTE,
  };
}

/**
 * Refuses one more of a kind. The creating transaction calls it after taking the owner lock, so that two concurrent
 * creations cannot both take the last place.
 *
 * @throws QuotaError
 */
export async function refuseOneMore(query: Ask, quotas: Quotas, name: QuotaName, owner: string): Promise<void> {
  if (!isCounted(name)) return;
  const used = await countOf(query, name, owner);
  if (used >= quotas[name]) throw new QuotaError(name, quotas[name], used);
}

/** Refuses another thermometer when the bed has its maximum. @throws QuotaError */
export async function refuseThermometer(query: Ask, quotas: Quotas, owner: string, bed: string): Promise<void> {
  const used = await thermometersOf(query, owner, bed);
  if (used >= quotas.thermometers) throw new QuotaError('thermometers', quotas.thermometers, used);
}
