import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Grade } from '../windows/grades.js';
import type { HarvestDates } from '../windows/harvest-dates.js';
import type { Reason } from '../windows/reasons.js';
import type { SowingWay } from '../windows/ways.js';
import type { CropSeason } from './crop-season.js';
import type { WeekFact } from './week-facts.js';

type Method = SowingWay['method'];

/** A crop to sow this week. */
export interface WeekSowing {
  /** 1 is the first to sow. */
  readonly rank: number;
  readonly crop: string;
  readonly method: Method;
  readonly grade: Exclude<Grade, 'poor'>;
  /** The best date in the week. */
  readonly date: PlainDate;
  /** The last date as good. */
  readonly until: PlainDate;
  /** Whether that is within the week. */
  readonly lastCall: boolean;
  readonly harvest: HarvestDates | null;
  /** Reasons why it is but fair. */
  readonly reasons: readonly Reason[];
  readonly text: WeekFact;
}

/** A crop whose plants can go out this week. */
export interface WeekPlanting {
  readonly crop: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly text: WeekFact;
}

/** A crop whose dates begin shortly after the week. */
export interface WeekSoon {
  readonly crop: string;
  readonly method: Method;
  readonly from: PlainDate;
  readonly grade: Exclude<Grade, 'poor'>;
}

/** A crop not to sow now, and when next. */
export interface WeekNotNow {
  readonly crop: string;
  readonly reasons: readonly Reason[];
  readonly next: { readonly from: PlainDate; readonly method: Method } | null;
}

/** Advice for a week: every crop stands in exactly one of `sow`, `soon` and `notNow`. */
export interface WeekAdvice {
  readonly sow: readonly WeekSowing[];
  readonly plantOut: readonly WeekPlanting[];
  readonly soon: readonly WeekSoon[];
  readonly notNow: readonly WeekNotNow[];
}

/** From the first day on, its week has so many days more [d]. */
export const WEEK_DAYS = 6;
/** What begins within three weeks of the first day is worth preparing for. Our assumption [d]. */
export const SOON_DAYS = 21;

const RANK: Readonly<Record<Grade, number>> = { good: 0, fair: 1, poor: 2 };

/**
 * Sorts crops into what to sow in the seven days from a date on, what soon, and what not now. Of several ways to raise a
 * crop the better one that is open counts.
 *
 * @param seasons Seasons of the crops, each judged for a year; what is raised in trays from its weeks in them before `on` on.
 * @param on      The first day of the week.
 */
export function weekAdvice(seasons: readonly CropSeason[], on: PlainDate): WeekAdvice {
  const to = addDays(on, WEEK_DAYS);
  const sow: Omit<WeekSowing, 'rank'>[] = [];
  const soon: WeekSoon[] = [];
  const notNow: WeekNotNow[] = [];
  for (const season of seasons) {
    const open = season.ways.find((way) => way.sow.from <= to && way.sow.to >= on && way.grade !== 'poor');
    const next = nextOf(season.ways, to);
    if (open) sow.push(sowingIn(season, open, on, to));
    else if (next && next.sow.from <= addDays(on, SOON_DAYS)) {
      soon.push({
        crop: season.crop,
        method: next.method,
        from: next.sow.from,
        grade: next.grade as 'good' | 'fair',
      });
    } else {
      notNow.push({
        crop: season.crop,
        reasons: spanAt(season, on)?.reasons ?? [],
        next: next ? { from: next.sow.from, method: next.method } : null,
      });
    }
  }
  const ranked = sow.sort((a, b) => RANK[a.grade] - RANK[b.grade] || compare(a.until, b.until));
  return {
    sow: ranked.map((one, i) => ({ rank: i + 1, ...one })),
    plantOut: seasons.flatMap((season) => plantingsIn(season, on, to)),
    soon: soon.sort((a, b) => compare(a.from, b.from)),
    notNow,
  };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The way that opens first after a date; of two on one date the better one. */
const nextOf = (ways: readonly SowingWay[], after: PlainDate): SowingWay | undefined =>
  ways
    .filter(({ sow, grade }) => sow.from > after && grade !== 'poor')
    .sort((a, b) => compare(a.sow.from, b.sow.from) || RANK[a.grade] - RANK[b.grade])[0];

const spanAt = ({ spans }: CropSeason, date: PlainDate) => spans.find(({ from, to }) => from <= date && date <= to);

function sowingIn(season: CropSeason, way: SowingWay, on: PlainDate, to: PlainDate): Omit<WeekSowing, 'rank'> {
  const { method, sow, harvest } = way;
  const first = sow.from > on ? sow.from : on;
  const date = sow.best >= first && sow.best <= to ? sow.best : first;
  // A good window may span a few fair days.
  const span = method === 'direct' ? spanAt(season, date) : undefined;
  const grade = span?.grade === 'fair' || way.grade === 'fair' ? 'fair' : 'good';
  const lastCall = sow.to <= to;
  return {
    crop: season.crop,
    method,
    grade,
    date,
    until: sow.to,
    lastCall,
    harvest,
    reasons: grade === 'fair' ? (span?.reasons ?? []) : [],
    text: {
      code: 'week.sow',
      params: {
        crop: season.crop,
        method,
        grade,
        date,
        untilDate: sow.to,
        lastCall: lastCall ? 'yes' : 'no',
        harvestFromDate: harvest?.from ?? null,
        harvestToDate: harvest?.to ?? null,
        roomC: way.method === 'indoors' ? way.roomC : null,
        plantOutDate: way.method === 'indoors' ? way.plantOut.best : null,
      },
    },
  };
}

function plantingsIn({ crop, ways }: CropSeason, on: PlainDate, to: PlainDate): WeekPlanting[] {
  const way = ways.find((one) => one.method === 'indoors' && one.plantOut.from <= to && one.plantOut.to >= on);
  if (way?.method !== 'indoors') return [];
  const from = way.plantOut.from > on ? way.plantOut.from : on;
  const dates = { from, to: way.plantOut.to };
  return [
    {
      crop,
      ...dates,
      text: { code: 'week.plant-out', params: { crop, ...dates } },
    },
  ];
}
