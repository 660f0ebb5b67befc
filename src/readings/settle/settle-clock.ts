import { fixedZone, instantText, type Zone } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import type { FileReport } from '../report.js';
import type { RowStore } from '../text/row-store.js';
import { drop, type FileHints, type RowsRead } from '../text/rows-read.js';
import { type DateOrder, wallsOf } from '../time/date-order.js';
import { instantsOfWallClock, standardOffsetMs } from '../time/wall-clock.js';

const SLICE = 100_000;

/** Packed stamps become the wall clock's time, in place. */
export function* toWallClock(
  stores: readonly RowStore[],
  order: DateOrder | null,
  { areInstants, stampOffset }: RowsRead,
): Generator<void> {
  if (order === null || areInstants) return;
  const shiftMs = (stampOffset ?? 0) * 60_000;
  for (const store of stores) {
    for (let from = 0; from < store.count; from += SLICE) {
      wallsOf(store.stamps().subarray(from, Math.min(store.count, from + SLICE)), order, shiftMs);
      yield;
    }
  }
}

export interface ClockSettled {
  readonly clock: FileReport['clock'];
  readonly zone: Zone;
}

/** Stamps become instants, by the clock that the caller or the file says, or that the stamps prove. */
export function* settleClock(
  read: RowsRead,
  hints: FileHints,
  placeZone: Zone | undefined,
  order: DateOrder | null,
  warnings: Note[],
): Generator<void, ClockSettled> {
  const said = read.time.clock;
  if (order === null) return { clock: 'utc', zone: placeZone ?? said.zone ?? fixedZone(0) };
  if (read.stampOffset !== null) {
    return { clock: read.stampOffset === 0 ? 'utc' : 'offset', zone: placeZone ?? fixedZone(read.stampOffset) };
  }
  const store = read.stores[0]!;
  const [stamps, count] = [store.stamps(), store.count];
  const fixed =
    hints.clock === 'utc' ? fixedZone(0) : hints.clock === null && said.zone && isFixed(said.zone) ? said.zone : null;
  if (fixed) {
    const shiftMs = fixed.offsetMs(0);
    for (let i = 0; i < count; i++) {
      stamps[i]! -= shiftMs;
      if (i % SLICE === 0) yield;
    }
    return {
      clock: shiftMs === 0 && (said.isUtc || hints.clock === 'utc') ? 'utc' : 'offset',
      zone: placeZone ?? fixed,
    };
  }
  const zone = placeZone ?? said.zone;
  if (!zone) {
    const detail = 'The stamps have no offset from UTC, and the file names no zone.';
    throw new RequestError('time-zone-needed', `${detail} Send timeZone, for example timeZone=Etc/GMT%2B2.`, [
      {
        parameter: 'timeZone',
        line: read.table.firstDataLine,
        detail: 'Stamps without an offset need the zone of the place.',
      },
    ]);
  }
  const clock = hints.clock === 'standard' || (hints.clock === null && said.isStandard) ? 'standard' : 'local';
  const firstWallMs = stamps.subarray(0, count).find((wall) => !Number.isNaN(wall)) ?? 0;
  const { missing, steadyThrough } = yield* instantsOfWallClock(stamps, count, zone, clock);
  if (hints.clock === null && steadyThrough.length > 0) throw askClock(steadyThrough, zone, firstWallMs);
  for (const row of missing) drop(read.dropped, store.lineOf(row), '', 'stands in the hour that the clocks skip');
  if (missing.length > 0) {
    warnings.push({
      code: 'skipped-hour',
      text: `${missing.length} rows stand in an hour that the clocks at the place skip, and are left out. If the logger's clock is not changed in spring and autumn, send clock=standard.`,
    });
  }
  return { clock, zone };
}

const isFixed = (zone: Zone): boolean => /^UTC/.test(zone.name);

function askClock(dates: readonly string[], zone: Zone, firstWallMs: number): RequestError {
  const detail = `The stamps run on without a break where the clocks of ${zone.name} change, on ${dates.slice(0, 3).join(', ')}: the logger's clock seems not to be changed.`;
  const at = (offsetMs: number): string => instantText(firstWallMs - offsetMs, zone);
  const standardMs = standardOffsetMs(zone, new Date(firstWallMs).getUTCFullYear());
  return new RequestError(
    'choose-clock',
    `${detail} Send clock=standard, clock=utc or, if it is changed after all, clock=local.`,
    [
      {
        parameter: 'clock',
        detail,
        choices: [
          {
            value: 'standard',
            reads: 'standard time all year',
            consequence: `the first reading is of ${at(standardMs)}`,
          },
          { value: 'utc', reads: 'UTC all year', consequence: `the first reading is of ${at(0)}` },
          {
            value: 'local',
            reads: 'changed in spring and autumn',
            consequence: `the first reading is of ${at(zone.offsetMs(firstWallMs))}; rows in an hour that the clocks skip are left out`,
          },
        ],
      },
    ],
  );
}
