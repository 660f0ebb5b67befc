import { dayOfYear, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import type { Growth } from '../../germination/growth.js';
import type { Fate } from '../../growth/fate.js';
import { growthInYear, type KindSpread } from '../../growth/growth-in-year.js';
import { type LongDays, longDays } from '../../growth/long-days.js';
import { seasonDay } from '../../growth/season-day.js';
import { sownInPlace } from '../../growth/tray-growth.js';
import { isTooWet, type WorkableGround, workableGround } from '../../growth/workable-ground.js';
import type { PastSoil } from '../ahead/past-soil.js';
import type { QuestionBed } from '../question.js';
import type { Site } from '../soil/known-hours.js';
import { centredMean } from './centred-mean.js';
import type { YearOfDates } from './year-of-dates.js';

/** A stand is counted so long after the sowing, where what counts is the harvest [d]: slow seed still makes it. */
export const STAND_DAYS = 60;
/** Six tenths of the way from the first to the last of the published days are those of middling kinds: see `growth.ts`. */
const MIDDLING = 0.6;
/** Soil is warm enough for a sowing as a mean of so many days around it, of a mean year. */
const SOIL_MEAN_DAYS = 7;

/** The demands of a crop's harvest on a season, beyond its emergence. */
export interface HarvestSeason {
  readonly growth: Growth;
  /** The crop's delay factor in beds; 1 where the grower gives a factor of their own. */
  readonly bedFactor: number;
  readonly kinds: KindSpread;
  readonly long: LongDays | null;
  readonly latitudeDeg: number;
  readonly from: PlainDate;
  /** The time for working the ground; null: the bed needs none. */
  readonly ground: WorkableGround | null;
  /** Is the ground of each date too wet and cold to be worked? Shape (nDates). */
  readonly isWet: Uint8Array;
}

/** Is the bed one whose ground has to be worked in spring, and does it drain? Soil in pots and trays is at hand at any time. */
const isWorked = ({ kind }: QuestionBed): boolean => kind === 'open-ground' || kind === 'raised-bed';

/**
 * The demands of the harvest on a season.
 *
 * @returns null where it is not judged: of rows of the caller's own, indoors, or where no latitude or no air is known.
 */
export function harvestSeason(
  { crop, site, bed, from, timeFactor }: HarvestAsked,
  air: PastSoil['air'],
  dates: readonly PlainDate[],
): HarvestSeason | null {
  const growth = sownInPlace(crop);
  const { latitude } = site;
  if (!growth || latitude === null || !air) return null;
  const ground = isWorked(bed) ? workableGround(air, latitude) : null;
  return {
    growth,
    bedFactor: timeFactor === null ? growth.bedFactor : 1,
    kinds: kindSpread(crop),
    long: growth.boltingDayLengthH === null ? null : longDays(latitude, growth.boltingDayLengthH),
    latitudeDeg: latitude,
    from,
    ground,
    isWet: Uint8Array.from(dates, (date) =>
      Number(ground !== null && isTooWet(ground, seasonDay(date, latitude), bed.kind === 'raised-bed')),
    ),
  };
}

export interface HarvestAsked {
  readonly crop: Crop;
  readonly site: Site;
  readonly bed: QuestionBed;
  readonly from: PlainDate;
  readonly timeFactor: number | null;
}

/** Heat units of early and late kinds from emergence on, beside those of middling ones. */
export function kindSpread({ maturity, rows }: Pick<Crop, 'maturity' | 'rows'>): KindSpread {
  if (!maturity) return { early: 1, late: 1 };
  const upDays = maturity.countedFrom === 'sowing' ? Math.min(...rows.flatMap(({ days }) => days ?? [])) : 0;
  const { fromDays, toDays } = maturity;
  const middling = fromDays + MIDDLING * (toDays - fromDays) - upDays;
  return { early: (fromDays - upDays) / middling, late: (toDays - upDays) / middling };
}

/** The fates of a year's sowings, from its air; null: the air of that year is unknown. */
export function growthOfYear(season: HarvestSeason, year: YearOfDates): ((sownH: number, upH: number) => Fate) | null {
  if (!year.minC || !year.meanC) return null;
  const { growth, kinds, long, latitudeDeg, from } = season;
  const firstDay = year.minFromH / 24;
  const firstDayOfYear = ((dayOfYear(from) - 1 + firstDay) % 365) + 1;
  const fate = growthInYear(growth, { minC: year.minC, meanC: year.meanC, firstDayOfYear, latitudeDeg }, kinds, long);
  return (sownH, upH) => fate((sownH - year.minFromH) / 24, (upH - year.minFromH) / 24);
}

/** The soil of a mean year on each date, as a mean of the week around it [°C]. Shape (nDates); NaN: no year is known. */
export function soilCourse(years: readonly YearOfDates[], nDates: number): Float64Array {
  const sums = new Float64Array(nDates);
  const counts = new Int32Array(nDates);
  for (const { hourlyC } of years) addDays(sums, counts, hourlyC);
  return centredMean(
    sums.map((sum, day) => sum / counts[day]!),
    SOIL_MEAN_DAYS,
  );
}

function addDays(sums: Float64Array, counts: Int32Array, hourlyC: Float64Array): void {
  for (let day = 0; day < sums.length; day++) {
    let sum = 0;
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) sum += hourlyC[hour]!;
    if (Number.isNaN(sum)) continue;
    sums[day]! += sum / 24;
    counts[day]!++;
  }
}
