import { fixedZone, instantText, type PlainDate, type Zone } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import { fileChoice, fileQuestion, readingsRefusal, rowFact, seriesWarning } from '../readings-facts.js';
import type { FileReport } from '../report.js';
import type { RowStore } from '../text/row-store.js';
import { drop, type FileHints, type RowsRead } from '../text/rows-read.js';
import { standardOffsetMs } from '../time/clock-spans.js';
import { type DateOrder, wallsOf } from '../time/date-order.js';
import { instantsOfWallClock } from '../time/wall-clock.js';

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
    throw new RequestError('time-zone-needed', readingsRefusal('time-zone-needed.file'), [
      {
        parameter: 'timeZone',
        line: read.table.firstDataLine,
        detail: readingsRefusal('time-zone-needed.file.field'),
      },
    ]);
  }
  const clock = hints.clock === 'standard' || (hints.clock === null && said.isStandard) ? 'standard' : 'local';
  const firstWallMs = stamps.subarray(0, count).find((wall) => !Number.isNaN(wall)) ?? 0;
  const { missing, steadyThrough } = yield* instantsOfWallClock(stamps, count, zone, clock);
  if (hints.clock === null && steadyThrough.length > 0) throw askClock(steadyThrough, zone, firstWallMs);
  for (const row of missing) drop(read.dropped, store.lineOf(row), '', rowFact('row.no-such-hour'));
  if (missing.length > 0) warnings.push(seriesWarning('skipped-hour', { rows: missing.length }));
  return { clock, zone };
}

const isFixed = (zone: Zone): boolean => /^UTC/.test(zone.name);

function askClock(dates: readonly PlainDate[], zone: Zone, firstWallMs: number): RequestError {
  const detail = fileQuestion('choose-clock.steady', { timeZone: zone.name, changedOn: dates[0]! });
  const offsets = {
    standard: standardOffsetMs(zone, new Date(firstWallMs).getUTCFullYear()),
    utc: 0,
    local: zone.offsetMs(firstWallMs),
  };
  const choices = (['standard', 'utc', 'local'] as const).map((clock) =>
    fileChoice(clock, 'choose-clock.choice', { clock, firstAt: instantText(firstWallMs - offsets[clock], zone) }),
  );
  return new RequestError(
    'choose-clock',
    [detail, fileQuestion('choose-clock.send')],
    [{ parameter: 'clock', detail, choices }],
  );
}
