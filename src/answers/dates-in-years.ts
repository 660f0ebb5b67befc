import { allSowings, type SowingOutcomes } from '../germination/all-sowings.js';
import { COHORTS, type Seed } from '../germination/cohorts.js';
import type { Crop } from '../germination/crop.js';
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
  const countH = 24 * season.criteria.maxDays;
  const allH = Float64Array.from(sowH.flatMap((hours) => [...hours]));
  const outcomes = allSowings(season.seed, season.soil.hourlyC, allH, {
    withinH: countH,
    viablePercent: season.viablePercent,
  });
  const meansC = runningMeans(season.soil.hourlyC, countH);
  const years = sowH.map((hours, year) => {
    let known = 0;
    hours.forEach((hour, date) => {
      const i = year * nDates + date;
      const whyNot = outcomes.known[i] === 1 ? whyNotOf(season, outcomes, i, hour, meansC[hour]!, frost) : undefined;
      if (whyNot === undefined) return;
      const tally = tallies[date]!;
      known++;
      tally.known++;
      if (whyNot === null) tally.good++;
      else tally.whyNot.set(whyNot, (tally.whyNot.get(whyNot) ?? 0) + 1);
      tally.stand.push(outcomes.laboratoryPercent[i]!);
      tally.ifHeldAreLost.push(outcomes.ifHeldAreLostPercent[i]!);
      if (Number.isNaN(outcomes.halfH[i]!)) return;
      tally.firstDays.push(outcomes.firstH[i]! / 24);
      tally.halfDays.push(outcomes.halfH[i]! / 24);
      tally.mostDays.push(outcomes.mostH[i]! / 24);
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

/** Why a date was not good in a year; null: it was; undefined: too little is known of the frost to come. */
function whyNotOf(
  { seed, crop, criteria }: Season,
  { up, upUnheld, firstH }: SowingOutcomes,
  i: number,
  sowH: number,
  meanC: number,
  frost: FrostRule | null,
): WhyNot | null | undefined {
  const frozen = frost && !Number.isNaN(firstH[i]!) ? frost(sowH + firstH[i]!) : false;
  if (frozen === null) return undefined;
  if (up[i]! < criteria.share * COHORTS) return tooWhat(crop, meanC);
  if (upUnheld[i]! < criteria.shareIfHeld * COHORTS) {
    return meanC < seed.hotThresholdC - SWING_K ? 'too-cold' : 'too-hot';
  }
  return frozen ? 'frost-to-come' : null;
}

/** The mean of the hours that follow each, so many of them [°C]; NaN where they are not all known. */
function runningMeans(hourlyC: Float64Array, hours: number): Float64Array {
  const means = new Float64Array(hourlyC.length).fill(NaN);
  let sum = 0;
  let unknown = 0;
  for (let hour = 0; hour < hourlyC.length; hour++) {
    if (Number.isNaN(hourlyC[hour]!)) unknown++;
    else sum += hourlyC[hour]!;
    const first = hour - hours + 1;
    if (first < 0) continue;
    if (unknown === 0) means[first] = sum / hours;
    if (Number.isNaN(hourlyC[first]!)) unknown--;
    else sum -= hourlyC[first]!;
  }
  return means;
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
