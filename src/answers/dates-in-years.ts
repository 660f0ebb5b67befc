import { COHORTS, cohortRun, type Seed } from '../germination/cohorts.js';
import type { Crop } from '../germination/crop.js';
import { countUpBy, outcomeAt } from '../germination/outcome.js';
import type { SoilRecord } from './soil-record.js';

/** What makes a date good in a year, and sure over the years. */
export interface WindowCriteria {
  /** Of what the lot can give, so much is up within `maxDays`. */
  readonly share: number;
  /** And so much even without the seed that heat or cold held too long. */
  readonly shareIfHeld: number;
  readonly maxDays: number;
  /** In so many of the years. */
  readonly sureness: number;
}

export type WhyNot = 'too-cold' | 'too-hot' | 'too-slow' | 'frost-to-come';

/** What a date would have done in the years that are known. */
export interface DateInYears {
  /** The share of them in which it was good; NaN where none is known. */
  readonly good: number;
  /** The commonest reason of the others; null where it was good in all. */
  readonly whyNot: WhyNot | null;
  readonly firstDays: readonly number[];
  readonly halfDays: readonly number[];
  readonly mostDays: readonly number[];
  /** Percent of seeds sown, of a lot as good as the table's. */
  readonly stand: readonly number[];
  readonly ifHeldAreLost: readonly number[];
}

export interface DatesInYears {
  readonly all: readonly DateInYears[];
  /** Which years tell of half of the dates or more. */
  readonly years: readonly boolean[];
  readonly frostKnown: boolean;
}

interface Season {
  readonly seed: Seed;
  readonly viablePercent: number;
  readonly crop: Crop;
  readonly criteria: WindowCriteria;
  readonly soil: SoilRecord;
  /** Year by year, the hour of the record's clock at which each date's sowing is made. */
  readonly sowH: readonly Float64Array[];
}

/** A tender seedling is looked after for so long; how cold it may get then, by the crop's hardiness [°C]. */
const FROST_DAYS = 30;
const FROST_C = { tender: 0, 'half-hardy': -2 } as const;

/** Every date's sowing in every year that is known. */
export function datesInYears(season: Season): DatesInYears {
  const { sowH } = season;
  const frost = frostRule(season);
  const nDates = sowH[0]?.length ?? 0;
  const tallies = Array.from({ length: nDates }, () => ({
    known: 0,
    good: 0,
    whyNot: new Map<WhyNot, number>(),
    firstDays: [] as number[],
    halfDays: [] as number[],
    mostDays: [] as number[],
    stand: [] as number[],
    ifHeldAreLost: [] as number[],
  }));
  const years = sowH.map((hours) => {
    let known = 0;
    hours.forEach((hour, date) => {
      const one = sowingIn(season, hour, frost);
      if (!one) return;
      const tally = tallies[date]!;
      known++;
      tally.known++;
      if (one.whyNot === null) tally.good++;
      else tally.whyNot.set(one.whyNot, (tally.whyNot.get(one.whyNot) ?? 0) + 1);
      tally.stand.push(one.stand);
      tally.ifHeldAreLost.push(one.ifHeldAreLost);
      if (one.halfDays === null) return;
      tally.firstDays.push(one.firstDays);
      tally.halfDays.push(one.halfDays);
      tally.mostDays.push(one.mostDays);
    });
    return known >= nDates / 2;
  });
  return {
    all: tallies.map(({ known, good, whyNot, ...rest }) => ({
      ...rest,
      good: good / known,
      whyNot: commonest(whyNot),
    })),
    years,
    frostKnown: frost !== null,
  };
}

const commonest = (reasons: ReadonlyMap<WhyNot, number>): WhyNot | null =>
  [...reasons].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;

interface OneSowing {
  readonly whyNot: WhyNot | null;
  readonly firstDays: number;
  readonly halfDays: number | null;
  readonly mostDays: number;
  readonly stand: number;
  readonly ifHeldAreLost: number;
}

/** One date in one year; null where too little is known of it. */
function sowingIn(
  { seed, viablePercent, crop, criteria, soil }: Season,
  sowH: number,
  frost: FrostRule | null,
): OneSowing | null {
  const countH = 24 * criteria.maxDays;
  if (sowH < 0 || sowH + countH > soil.nHours) return null;
  const hourlyC = soil.hourlyC.subarray(sowH, sowH + countH);
  let sum = 0;
  for (let hour = 0; hour < countH; hour++) sum += hourlyC[hour]!;
  if (Number.isNaN(sum)) return null;
  const run = cohortRun(seed, hourlyC);
  const outcome = outcomeAt(run, countH, viablePercent);
  const up = countUpBy(run, countH) / COHORTS;
  const upUnheld = outcome.ifHeldAreLostPercent / Math.max(viablePercent, 1e-9);
  const meanC = sum / countH;
  let whyNot: WhyNot | null = null;
  if (up < criteria.share) whyNot = tooWhat(crop, meanC);
  else if (upUnheld < criteria.shareIfHeld) whyNot = meanC < seed.hotThresholdC - SWING_K ? 'too-cold' : 'too-hot';
  if (frost && outcome.firstH !== null) {
    const frozen = frost(sowH + outcome.firstH);
    if (frozen === null) return null;
    if (frozen) whyNot ??= 'frost-to-come';
  }
  return {
    whyNot,
    firstDays: (outcome.firstH ?? NaN) / 24,
    halfDays: outcome.halfH === null ? null : outcome.halfH / 24,
    mostDays: (outcome.mostH ?? NaN) / 24,
    stand: outcome.laboratoryPercent,
    ifHeldAreLost: outcome.ifHeldAreLostPercent,
  };
}

/** Afternoons rise so far above the mean in which seed is held [K]: our judgement, for the reason alone. */
const SWING_K = 10;

/** Why too little is up: the soil's mean lies below, within or above what suits the crop. */
function tooWhat({ soil, rows, hotThresholdC }: Crop, meanC: number): WhyNot {
  const coldest = soil?.minimumC ?? Math.min(...rows.map((row) => row.temperatureC));
  if (meanC < coldest) return 'too-cold';
  return meanC > Math.min(hotThresholdC, soil?.optimumToC ?? Infinity) ? 'too-hot' : 'too-slow';
}

/** Does frost come on seedlings that show at an hour of the record's clock? null: not known. */
type FrostRule = (firstH: number) => boolean | null;

function frostRule({ crop, soil }: Season): FrostRule | null {
  const limitC = crop.frost === 'tender' || crop.frost === 'half-hardy' ? FROST_C[crop.frost] : null;
  const days = soil.model?.air.record.days;
  if (limitC === null || !days) return null;
  const untilMature = crop.frost === 'tender' && crop.maturity?.countedFrom === 'sowing' ? crop.maturity.fromDays : 0;
  const exposedDays = Math.max(FROST_DAYS, untilMature);
  // How many days ahead the next frost lies, from the last day back.
  const nextFrost = new Float64Array(days.length + 1).fill(Infinity);
  for (let day = days.length - 1; day >= 0; day--) {
    nextFrost[day] = days[day]!.minC <= limitC ? 0 : nextFrost[day + 1]! + 1;
  }
  const startH = soil.modelFromH + days[0]!.startH;
  return (firstH) => {
    const day = Math.floor((firstH - startH) / 24);
    if (day < 0 || day >= days.length) return null;
    if (nextFrost[day]! <= exposedDays) return true;
    return day + exposedDays < days.length ? false : null;
  };
}
