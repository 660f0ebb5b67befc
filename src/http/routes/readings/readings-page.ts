import { addDays, dateAt, instantText, startOfDay, type Zone } from '../../../basics/calendar.js';
import { notUnderstood } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { bases } from '../../../basics/series.js';
import type { Bed, DateRange, InstantRange, Probe, Store } from '../../../garden/store/store.js';
import type { Readings } from '../../../readings/readings.js';
import { roundingFor } from '../../negotiation/rounding.js';
import { AT_SEED, isWanted, type ReadingsAsked } from './readings-query.js';

/** The bed whose readings are requested. */
export interface BedReadings {
  readonly store: Store;
  readonly owner: string;
  readonly bed: Bed;
  /** The time zone of the bed's place. */
  readonly zone: Zone;
}

/**
 * One page of a bed's readings, a series for each thermometer, and the instant to continue after.
 *
 * @param isOne True if the page must be of one thermometer.
 * @throws {RequestError} `not-understood` if it would be of several, naming them.
 */
export async function readingsPage(of: BedReadings, asked: ReadingsAsked, isOne: boolean) {
  const { store, owner, bed, zone } = of;
  const { after, limit, precision } = asked;
  const probes = (await store.series(owner, bed.id)).filter((probe) => isWanted(probe, asked));
  if (isOne) refuseSeveral(probes);
  const dates = instantsOf(asked, zone);
  const range: InstantRange =
    after === undefined ? dates : { ...dates, fromMs: Math.max(dates.fromMs ?? -Infinity, Math.floor(after) + 1) };
  const end = await endOfPage(of, probes, range, limit);
  const series = [];
  for (const probe of probes) {
    const readings = await store.readings(owner, bed.id, probe, { ...range, toMs: end.toMs });
    if (readings.atMs.length > 0) series.push(serializeReadings(probe, readings, zone, precision));
  }
  return { revision: bed.revision, series, next: end.isLast ? null : instantText(end.toMs! - 1, zone) };
}

/** The instants of whole days between dates. */
export const instantsOf = ({ from, to }: DateRange, zone: Zone): InstantRange => ({
  ...(from === undefined ? {} : { fromMs: startOfDay(from, zone) }),
  ...(to === undefined ? {} : { toMs: startOfDay(addDays(to, 1), zone) }),
});

function refuseSeveral(probes: readonly Probe[]): void {
  if (probes.length < 2) return;
  const all = probes.map(({ medium, probeDepthCm }) => `medium=${medium}&probeDepthCm=${probeDepthCm ?? AT_SEED}`);
  throw notUnderstood([{ parameter: 'as', detail: fieldFact('field.one-thermometer', { ways: all.join(', ') }) }]);
}

/** The end of a page: the first day on which some thermometer reaches `limit` readings. */
async function endOfPage(
  { store, owner, bed, zone }: BedReadings,
  probes: readonly Probe[],
  { fromMs, toMs }: InstantRange,
  limit: number,
) {
  const dates: DateRange = {
    from: fromMs === undefined ? undefined : dateAt(fromMs, zone),
    to: toMs === undefined ? undefined : dateAt(toMs - 1, zone),
  };
  let endMs = toMs;
  let isLast = true;
  for (const probe of probes) {
    const days = await store.readingDays(owner, bed.id, probe, dates);
    let full = 0;
    for (let count = 0; full < days.length && count < limit; full++) count += days[full]!.readings;
    if (full === days.length) continue;
    const midnight = startOfDay(addDays(days[full - 1]!.date, 1), zone);
    if (endMs === undefined || midnight < endMs) endMs = midnight;
    isLast = false;
  }
  return { toMs: endMs, isLast };
}

function serializeReadings(
  { medium, probeDepthCm }: Probe,
  readings: Readings,
  zone: Zone,
  precision: 'full' | 'rounded',
) {
  const { temperature } = roundingFor(precision);
  const rows = Array.from(readings.atMs, (atMs, i) => {
    const basis = bases[readings.basis[i]!]!;
    return {
      at: instantText(atMs, zone),
      value: temperature(readings.valueC[i]!),
      ...(basis === 'measured' ? {} : { basis }),
    };
  });
  return { medium, ...(probeDepthCm === null ? {} : { probeDepthCm }), unit: 'C', readings: rows };
}
