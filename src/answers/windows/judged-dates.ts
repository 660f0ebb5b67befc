import { addDays, daysBetween, type PlainDate, startOfDay } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Normals } from '../../climate/normals.js';
import type { Crop } from '../../germination/crop.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { SeriesReport } from '../../readings/report.js';
import { type FindPast, MIN_YEARS, type PastSoil, seriesOfYears, yearsTold } from '../ahead/past-soil.js';
import { climatologicalSoil } from '../forecast/extrapolation.js';
import { seedOf } from '../forecast/seed-of.js';
import type { Bedding, Lot } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { type DateInYears, datesInYears, type WindowCriteria } from './dates-in-years.js';
import { type Grade, type Graded, type GradedRun, gradesOf } from './grades.js';
import { type HarvestSeason, harvestSeason, STAND_DAYS, soilCourse } from './harvest-season.js';
import { type Reason, reasonsOf } from './reasons.js';
import type { Run } from './sureness.js';
import { spansOf } from './told-spans.js';
import type { YearOfDates } from './year-of-dates.js';
import { datesInClimatologicalYear, yearsOfDates } from './years-of-dates.js';

/** What a grower asks: when should I sow. */
export interface WindowQuestion extends Bedding {
  readonly crop: Crop;
  readonly time: string;
  readonly lot: Lot | null;
  readonly timeFactor: number | null;
  readonly series: readonly ReadSeries[];
  readonly understood: readonly SeriesReport[];
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly criteria: WindowCriteria;
  readonly prefer: 'earliest' | 'surest';
  /** `emergence`: that it comes up is enough. */
  readonly judge: 'harvest' | 'emergence';
  readonly normals: Normals | null;
  /** Typical years of the place's air, where neither past years nor normals are known. */
  readonly typicalAir?: ReadSeries | null | undefined;
}

/** The dates of a season, each with its outcome in the years, graded. */
export interface JudgedDates {
  readonly all: readonly DateInYears[];
  readonly graded: Graded;
  /** The grade of each date. */
  readonly gradeOf: readonly Grade[];
  /** Reasons against the dates of a run, the one that spoilt most years first. */
  readonly reasonsIn: (run: Run) => Reason[];
  /** Reasons against one date, by the week around it, as its sureness is. */
  readonly reasonsOn: (day: number) => Reason[];
  /** Runs of one grade, cut where their main reason changes. */
  readonly spans: readonly GradedRun[];
  /** The years that judge; empty: a climatological year does. */
  readonly years: readonly number[];
  /** The dates in those years. */
  readonly known: readonly YearOfDates[];
  readonly isUsual: boolean;
  /** The stand is counted so long after the sowing [d]. */
  readonly standDays: number;
  /** Whether the years tell of frost. */
  readonly frostKnown: boolean;
  readonly soil: PastSoil;
  /** The demands of the harvest; null: emergence alone is judged. */
  readonly season: HarvestSeason | null;
  /** Whether a harvest is judged. */
  readonly isJudged: boolean;
}

/**
 * Judges the dates of a season by the outcome of each in past years, or in a climatological one.
 *
 * @throws {RequestError} `no-past-years` where neither enough years nor normals are known.
 */
export function judgedDates(question: WindowQuestion, findPast: FindPast, shouldStop?: ShouldStop): JudgedDates {
  const { site, crop, criteria, from, to, normals } = question;
  const series = seriesOfYears(question);
  const nDates = daysBetween(from, to) + 1;
  const phaseMs = startOfDay(from, site.zone);
  const past = yearsTold(series) >= MIN_YEARS ? findPast(series, question, phaseMs, shouldStop) : null;
  const isToHarvest = question.judge === 'harvest';
  const standDays = isToHarvest ? Math.max(STAND_DAYS, criteria.maxDays) : criteria.maxDays;
  const asked = { ...question, countDays: standDays };
  const dates = Array.from({ length: nDates }, (_, day): PlainDate => addDays(from, day));
  const harvestOf = (soil: PastSoil | null) => (isToHarvest && soil ? harvestSeason(question, soil.air, dates) : null);
  const ofPast = past ? yearsOfDates(past, asked, nDates) : [];
  const seed = seedOf(question);
  const viablePercent = question.lot?.germinationPercent ?? seed.curve.bestPercent;
  const seasonOfPast = harvestOf(past);
  const inYears = datesInYears(
    { seed, viablePercent, crop, criteria, years: ofPast, harvest: seasonOfPast },
    shouldStop,
  );
  const known = ofPast.filter((_, i) => inYears.years[i]);
  const isUsual = known.length < MIN_YEARS;
  if (isUsual && !normals) refuseFewYears(known.length);
  // Usual years lie before the dates asked, whenever the last value came.
  const usual = isUsual
    ? climatologicalSoil(normals!, { ...question, series: [] }, phaseMs, findPast, shouldStop)
    : null;
  const season = usual ? harvestOf(usual) : seasonOfPast;
  const { all, frostKnown } = usual
    ? datesInClimatologicalYear(usual, asked, nDates, (some) =>
        datesInYears({ seed, viablePercent, crop, criteria, years: some, harvest: season }, shouldStop),
      )
    : inYears;
  const soilC = soilCourse(usual ? yearsOfDates(usual, asked, nDates).slice(-1) : ofPast, nDates);
  const years = isUsual ? [] : known.map(({ year }) => year);
  const graded = gradesOf(all, criteria);
  const setting = { crop, criteria, from, years: years.length, soilC };
  return {
    all,
    graded,
    gradeOf: gradeOfDates(graded.runs, nDates),
    reasonsIn: (run) => reasonsOf(all, run, setting, 'dates'),
    reasonsOn: (day) => {
      const around = { from: Math.max(0, day - BESIDE_DAYS), to: Math.min(nDates - 1, day + BESIDE_DAYS) };
      return reasonsOf(all, around, setting, 'date');
    },
    spans: spansOf(all, graded.runs),
    years,
    known,
    isUsual,
    standDays,
    frostKnown,
    soil: usual ?? past!,
    season,
    isJudged: season !== null,
  };
}

/** The sureness of a date is that of the week around it: so many days to either side [d]. */
const BESIDE_DAYS = 3;

/** The grade of each date, from runs in which every date is. */
export function gradeOfDates(runs: readonly GradedRun[], nDates: number): Grade[] {
  const of = new Array<Grade>(nDates).fill('poor');
  for (const { from, to, grade } of runs) of.fill(grade, from, to + 1);
  return of;
}

function refuseFewYears(count: number): never {
  throw new RequestError(
    'no-past-years',
    answerRefusal('no-past-years.windows', { years: count, minYears: MIN_YEARS }),
    [{ path: ['temperatures'], detail: answerRefusal('no-past-years.windows.field', { minYears: MIN_YEARS }) }],
  );
}
