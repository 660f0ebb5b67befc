import { addDays, type PlainDate } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { PastSoil } from '../ahead/past-soil.js';
import { type Question, seedDepthCm } from '../question.js';
import { bestOf } from './best-date.js';
import { usualCriteria } from './dates-in-years.js';
import type { Grade } from './grades.js';
import { type HarvestDates, harvestOfDate } from './harvest-dates.js';
import { judgedDates, type WindowQuestion } from './judged-dates.js';
import type { Reason } from './reasons.js';
import type { DateVerdictFact } from './window-facts.js';

/** Is the date of a sowing a good one? */
export interface DateVerdict {
  readonly grade: Grade;
  readonly reasons: readonly Reason[];
  /** The best date of the year from then on, where this one is not good; null: none is better. */
  readonly better: { readonly date: PlainDate; readonly grade: Grade } | null;
  readonly text: DateVerdictFact;
}

/** Dates to either side that are judged with it: a grade is that of a span of a week or more, by means of a week [d]. */
const AROUND_DAYS = 21;

/**
 * The grade of a sowing's date, as sowing windows have it, and its harvest.
 *
 * @param past The bed's soil in past years, or in a usual one.
 * @returns null where too few years are known.
 */
export function dateVerdict(
  question: Question,
  past: PastSoil,
  shouldStop?: ShouldStop,
): { readonly dateVerdict: DateVerdict; readonly harvest: HarvestDates | null } | null {
  const { date } = question.sowing;
  try {
    const judge = (from: PlainDate, to: PlainDate) => {
      const dates = datesToJudge(question, from, to);
      return { dates, judged: judgedDates(dates, () => past, shouldStop) };
    };
    const near = judge(addDays(date, -AROUND_DAYS), addDays(date, AROUND_DAYS)).judged;
    const grade = near.gradeOf[AROUND_DAYS]!;
    const harvest = grade === 'poor' ? null : harvestOfDate(near.all[AROUND_DAYS]!, date);
    const reasons = grade === 'good' ? [] : near.reasonsOn(AROUND_DAYS);
    const later = grade === 'good' ? null : judge(date, addDays(date, LAST_DATE_DAYS));
    const best = later && bestOf(later.dates, later.judged);
    const isBetter = best !== null && (best.grade === 'good' || grade === 'poor');
    const better = isBetter ? { date: best.date, grade: best.grade } : null;
    return { dateVerdict: { grade, reasons, better, text: textOf(grade, reasons, better, harvest) }, harvest };
  } catch (error) {
    if (error instanceof RequestError && error.code === 'no-past-years') return null;
    throw error;
  }
}

const LAST_DATE_DAYS = 364;

/** The question about dates around or after that of a sowing. */
const datesToJudge = (
  { crop, site, bed, sowing, lot, timeFactor, series, normals, typicalAir, understood }: Question,
  from: PlainDate,
  to: PlainDate,
): WindowQuestion => ({
  crop,
  site,
  bed,
  depthCm: seedDepthCm({ sowing, crop }),
  time: sowing.time,
  lot,
  timeFactor,
  series,
  understood,
  from,
  to,
  criteria: { ...usualCriteria, maxDays: crop.maxDays },
  prefer: 'earliest',
  judge: 'harvest',
  normals,
  typicalAir,
});

function textOf(
  grade: Grade,
  reasons: readonly Reason[],
  better: DateVerdict['better'],
  harvest: HarvestDates | null,
): DateVerdictFact {
  const why = reasons[0]?.code;
  if (grade === 'good' || why === undefined) {
    return { code: 'verdict-on-date.good', params: { harvestOn: harvest?.from ?? null } };
  }
  return { code: `verdict-on-date.${grade}`, params: { why, betterOn: better?.date ?? null } };
}
