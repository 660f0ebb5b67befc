import { addDays, HOUR_MS, instantAt, type PlainDate } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { ChartAnswer } from '../../germination/curve/chart.js';
import { MAX_COUNT_DAYS } from '../../germination/run/count-day.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import type { Question } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { countDaysFor } from './count-days.js';
import type { SeedRecord } from './record/seed-temperature.js';

/** From the wetting of the seed to its count. */
export interface CountPeriod {
  readonly imbibitionMs: number;
  /** Hours from sowing to wetting. */
  readonly waitH: number;
  readonly countDays: number;
  /** When the grower counts [h since wetting]. */
  readonly countH: number;
  readonly by: PlainDate;
}

/**
 * When the seed is first wet: at sowing, or in dry soil at noon of the day it is watered.
 *
 * @throws {RequestError} `not-understood` where the soil was wetted before the sowing.
 */
export function imbibitionMsOf({ bed, site, sowing }: Question): number {
  const sowMs = instantAt(sowing.date, sowing.time, site.zone);
  if (bed.wettedOn === null) return sowMs;
  if (bed.wettedOn < sowing.date) {
    throw new RequestError(
      'not-understood',
      answerRefusal('not-understood.wetted-before-sowing', { wettedOn: bed.wettedOn, sowingDate: sowing.date }),
      [{ path: ['where', 'bed', 'wettedOn'], detail: answerRefusal('not-understood.wetted-before-sowing.field') }],
    );
  }
  return Math.max(sowMs, instantAt(bed.wettedOn, '12:00', site.zone));
}

/**
 * The days until the count: as the grower says, else as the chart's days and the temperatures suggest.
 *
 * @throws {RequestError} `not-understood` where the soil is wetted after the count.
 */
export function countPeriodOf(
  question: Question,
  imbibitionMs: number,
  chart: (meanC: number) => ChartAnswer,
  timeFactor: number,
  record: SeedRecord,
  beyond: Extrapolation,
): CountPeriod {
  const { sowing, site } = question;
  const waitH = (imbibitionMs - instantAt(sowing.date, sowing.time, site.zone)) / HOUR_MS;
  const knownH = record.knownToH - record.imbibitionH;
  const reachDays = beyond === 'refuse' ? Math.max(0, Math.floor(knownH / 24)) : MAX_COUNT_DAYS;
  const countDays = question.countDays ?? countDaysFor(chart, timeFactor, record, waitH, reachDays);
  const countH = 24 * countDays - waitH;
  const by = addDays(sowing.date, countDays);
  if (countH <= 0) refuseLateWetting(question, by);
  return { imbibitionMs, waitH, countDays, countH, by };
}

function refuseLateWetting({ bed }: Question, by: PlainDate): never {
  throw new RequestError(
    'not-understood',
    answerRefusal('not-understood.wetted-after-count', { wettedOn: bed.wettedOn!, countDate: by }),
    [{ path: ['countDays'], detail: answerRefusal('not-understood.wetted-after-count.field') }],
  );
}
