import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Grade, GradedRun } from './grades.js';
import { type HarvestDates, harvestOfRun } from './harvest-dates.js';
import type { IndoorWay, WayDates } from './indoor-ways.js';
import type { JudgedDates } from './judged-dates.js';
import { bestDay } from './sureness.js';
import type { InsteadFact } from './window-facts.js';

/** Sown in place. */
export interface DirectWay {
  readonly method: 'direct';
  readonly grade: Grade;
  readonly sow: WayDates;
  readonly harvest: HarvestDates | null;
}

/** One way to grow it: where it is sown, and when. */
export type SowingWay = DirectWay | IndoorWay;

/** What would make a date good where none, or few, are. */
export interface SowingInstead {
  readonly action: 'keep-wet' | 'shade' | 'cover' | 'wait' | 'start-indoors';
  readonly grade: Grade;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly text: InsteadFact;
}

/** The ways to grow it in place, the better first; the best date of each by the rule of the answer's own best date. */
export function directWays(
  windows: readonly GradedRun[],
  { all: dates, graded: { odds, sureness } }: Pick<JudgedDates, 'all' | 'graded'>,
  { best, from, prefer }: { best: PlainDate | null; from: PlainDate; prefer: 'earliest' | 'surest' },
): DirectWay[] {
  const dated = (day: number): PlainDate => addDays(from, day);
  return windows
    .toSorted((a, b) => Number(b.grade === 'good') - Number(a.grade === 'good') || a.from - b.from)
    .map((run) => {
      const isBest = best !== null && dated(run.from) <= best && best <= dated(run.to);
      const own = bestDay(run.grade === 'good' ? sureness : odds, [run], prefer)?.day ?? run.from;
      return {
        method: 'direct',
        grade: run.grade,
        sow: { from: dated(run.from), best: isBest ? best : dated(own), to: dated(run.to) },
        harvest: harvestOfRun(dates, run, from),
      };
    });
}

/** Trays come first among ways as good where they give a harvest of so many more days: else they are not worth the work. */
const WORTH_TRAYS_DAYS = 14;

/** All ways, the better first: by their grade, then those in place, unless trays give a much longer harvest. */
export function waysOf(direct: readonly DirectWay[], indoors: readonly IndoorWay[]): SowingWay[] {
  return (['good', 'fair'] as const).flatMap((grade): SowingWay[] => {
    const inPlace = direct.filter((way) => way.grade === grade);
    const inTrays = indoors.filter((way) => way.grade === grade);
    const gainDays = longestHarvest(inTrays) - longestHarvest(inPlace);
    return gainDays >= WORTH_TRAYS_DAYS ? [...inTrays, ...inPlace] : [...inPlace, ...inTrays];
  });
}

const longestHarvest = (ways: readonly SowingWay[]): number =>
  Math.max(0, ...ways.map(({ harvest }) => (harvest ? daysBetween(harvest.from, harvest.to) + 1 : 0)));

/**
 * Advice for a first date that is not good in place: wait for the next good dates or, if there are none, for fair ones; or
 * sow in trays, where that is good. The better first.
 */
export function insteadOf(runs: readonly GradedRun[], indoors: readonly IndoorWay[], from: PlainDate): SowingInstead[] {
  if (runs[0]?.grade === 'good') return [];
  const next = runs.find(({ grade }) => grade === 'good') ?? runs.find(({ grade }, i) => grade === 'fair' && i > 0);
  const waiting = next ? [waitFor(next, from)] : [];
  const trays = indoors.find(({ grade }) => grade === 'good');
  const inTrays = trays ? [startIndoors(trays)] : [];
  return next?.grade === 'fair' ? [...inTrays, ...waiting] : [...waiting, ...inTrays];
}

function waitFor(run: GradedRun, first: PlainDate): SowingInstead {
  const dates = { from: addDays(first, run.from), to: addDays(first, run.to) };
  return { action: 'wait', grade: run.grade, ...dates, text: { code: 'instead.wait', params: dates } };
}

function startIndoors({ grade, roomC, sow: { from, to }, plantOut }: IndoorWay): SowingInstead {
  const params = { from, to, roomC, plantOutFromDate: plantOut.from, plantOutToDate: plantOut.to };
  return { action: 'start-indoors', grade, from, to, text: { code: 'instead.start-indoors', params } };
}
