import type { ShouldStop } from '../../basics/stop.js';
import type { Crop } from '../../germination/crop.js';
import { allSowings, type SowingOutcomes } from '../../germination/many/all-sowings.js';
import { COHORTS, type Seed } from '../../germination/run/cohorts.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';

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

/** What makes a date good where nobody says otherwise. */
export const usualCriteria = { share: 0.8, shareIfHeld: 0.6, sureness: 0.8 } as const;

export type WhyNotInYear = 'too-cold' | 'too-hot' | 'too-slow' | 'frost-to-come';

/** What a date would have done in the years that are known. */
export interface DateInYears {
  /** The share of them in which it was good; NaN where none is known. */
  readonly good: number;
  /** The commonest reason of the others; null where it was good in all. */
  readonly whyNot: WhyNotInYear | null;
  /** A value of each year in which half of those that came were up, rising. */
  readonly firstDays: Float64Array;
  readonly halfDays: Float64Array;
  readonly mostDays: Float64Array;
  /** Percent of seeds sown, of a lot as good as the table's, in each year that is known; rising. */
  readonly stand: Float64Array;
  readonly ifHeldAreLost: Float64Array;
}

export interface DatesInYears {
  readonly all: readonly DateInYears[];
  /** Which years tell of half of the dates or more. */
  readonly years: readonly boolean[];
  readonly frostKnown: boolean;
}

/** The dates of one season as a past year would have had them. */
export interface YearOfDates {
  /** Hourly means at the seed from some hour on [°C]; NaN where nothing is known. Shape (nHours), the same in all years. */
  readonly hourlyC: Float64Array;
  /** The hour at which each date's sowing is made. Shape (nDates), never falling. */
  readonly sowH: Float64Array;
  /** Minima of the air, from the hour `minFromH` on, day by day [°C]; null: not known. */
  readonly minC: Float64Array | null;
  readonly minFromH: number;
}

interface Season {
  readonly seed: Seed;
  readonly viablePercent: number;
  readonly crop: Crop;
  readonly criteria: WindowCriteria;
  readonly years: readonly YearOfDates[];
}

/** Every date's sowing in every year that is known. */
export function datesInYears(season: Season, shouldStop?: ShouldStop): DatesInYears {
  const nDates = season.years[0]?.sowH.length ?? 0;
  const nHours = season.years[0]?.hourlyC.length ?? 0;
  const tallies = Array.from({ length: nDates }, () => ({
    known: 0,
    good: 0,
    whyNot: new Map<WhyNotInYear, number>(),
  }));
  const values = (): ValuesOfDates => valuesOfDates(nDates, season.years.length);
  const [firstDays, halfDays, mostDays, stand, ifHeldAreLost] = [values(), values(), values(), values(), values()];
  const countH = 24 * season.criteria.maxDays;
  // One year after the other, so that all are one run. What is sown last in one has its days before the next begins.
  const hourlyC = new Float64Array(nHours * season.years.length);
  for (const [i, year] of season.years.entries()) hourlyC.set(year.hourlyC, i * nHours);
  const allH = new Float64Array(nDates * season.years.length);
  for (const [i, { sowH }] of season.years.entries()) {
    for (let date = 0; date < nDates; date++) allH[i * nDates + date] = i * nHours + sowH[date]!;
  }
  const counting = { withinH: countH, viablePercent: season.viablePercent };
  const outcomes = allSowings(season.seed, hourlyC, allH, counting, shouldStop);
  const suits = soilOfTheCrop(season, hourlyC, countH);
  const years = season.years.map((own, year) => {
    const frost = frostRule(season, own);
    let known = 0;
    for (let date = 0; date < nDates; date++) {
      const i = year * nDates + date;
      if (outcomes.known[i] === 0) continue;
      const whyNot = whyNotOf(season, outcomes, i, own.sowH[date]!, () => suits(allH[i]!), frost);
      if (whyNot === undefined) continue;
      const tally = tallies[date]!;
      known++;
      tally.known++;
      if (whyNot === null) tally.good++;
      else tally.whyNot.set(whyNot, (tally.whyNot.get(whyNot) ?? 0) + 1);
      stand.add(date, outcomes.laboratoryPercent[i]!);
      ifHeldAreLost.add(date, outcomes.ifHeldAreLostPercent[i]!);
      if (Number.isNaN(outcomes.halfH[i]!)) continue;
      firstDays.add(date, outcomes.firstH[i]! / 24);
      halfDays.add(date, outcomes.halfH[i]! / 24);
      mostDays.add(date, outcomes.mostH[i]! / 24);
    }
    return known >= nDates / 2;
  });
  return {
    all: tallies.map(({ known, good, whyNot }, date) => ({
      good: good / known,
      whyNot: mostOften(whyNot),
      firstDays: firstDays.sorted(date),
      halfDays: halfDays.sorted(date),
      mostDays: mostDays.sorted(date),
      stand: stand.sorted(date),
      ifHeldAreLost: ifHeldAreLost.sorted(date),
    })),
    years,
    frostKnown: season.years.some(({ minC }) => minC !== null),
  };
}

interface ValuesOfDates {
  add(date: number, value: number): void;
  /** What was added to a date, rising. */
  sorted(date: number): Float64Array;
}

/** Values by date, up to so many of each: one array for all, as there are thousands of them. */
function valuesOfDates(nDates: number, most: number): ValuesOfDates {
  const values = new Float64Array(nDates * most);
  const counts = new Int32Array(nDates);
  return {
    add(date, value) {
      values[date * most + counts[date]!] = value;
      counts[date]!++;
    },
    sorted: (date) => values.subarray(date * most, date * most + counts[date]!).sort(),
  };
}

const mostOften = (reasons: ReadonlyMap<WhyNotInYear, number>): WhyNotInYear | null =>
  [...reasons].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;

/** The reason that most years give; null: none gives any. */
export function commonest(reasons: readonly (WhyNotInYear | null)[]): WhyNotInYear | null {
  const counts = new Map<WhyNotInYear, number>();
  for (const why of reasons) if (why) counts.set(why, (counts.get(why) ?? 0) + 1);
  return mostOften(counts);
}

/** Why a date was not good in a year; null: it was; undefined: too little is known of the frost to come. */
function whyNotOf(
  { criteria }: Season,
  { up, upUnheld, firstH }: SowingOutcomes,
  i: number,
  sowH: number,
  tooWhat: () => WhyNotInYear,
  frost: FrostRule | null,
): WhyNotInYear | null | undefined {
  const frozen = frost && !Number.isNaN(firstH[i]!) ? frost(sowH + firstH[i]!) : false;
  if (frozen === null) return undefined;
  if (up[i]! < criteria.share * COHORTS || upUnheld[i]! < criteria.shareIfHeld * COHORTS) return tooWhat();
  return frozen ? 'frost-to-come' : null;
}

/** What is wrong with the soil after an hour, were too little to come up: more of its hours are too hot than too cold, or
 * it is colder all in all than the crop bears, or but slow. */
function soilOfTheCrop({ seed, crop }: Season, hourlyC: Float64Array, hours: number): (fromH: number) => WhyNotInYear {
  const { soil, rows } = crop;
  const coldestC = soil?.minimumC ?? Math.min(...rows.map((row) => row.temperatureC));
  const coolC = soil?.optimumFromC ?? coldestC;
  // Hours too hot less hours too cold, and degrees, each summed up to an hour.
  const hotterH = new Int32Array(hourlyC.length + 1);
  const sumsC = new Float64Array(hourlyC.length + 1);
  const limits = { hotC: seed.hotThresholdC, coolC };
  for (let hour = 0; hour < hourlyC.length; hour += CHUNK_H) {
    addSoilSums(hotterH, sumsC, hourlyC, limits, hour, Math.min(hourlyC.length, hour + CHUNK_H));
  }
  return (fromH) => {
    const toH = Math.min(hourlyC.length, fromH + hours);
    if (hotterH[toH]! > hotterH[fromH]!) return 'too-hot';
    return (sumsC[toH]! - sumsC[fromH]!) / (toH - fromH) < coldestC ? 'too-cold' : 'too-slow';
  };
}

/** Hours summed up in one call: see `hourlyProgress`. */
const CHUNK_H = 30 * 24;

function addSoilSums(
  hotterH: Int32Array,
  sumsC: Float64Array,
  hourlyC: Float64Array,
  { hotC, coolC }: { readonly hotC: number; readonly coolC: number },
  fromH: number,
  toH: number,
): void {
  let hotter = hotterH[fromH]!;
  let sumC = sumsC[fromH]!;
  for (let hour = fromH; hour < toH; hour++) {
    const tempC = hourlyC[hour]!;
    if (tempC > hotC) hotter++;
    if (tempC < coolC) hotter--;
    if (!Number.isNaN(tempC)) sumC += tempC;
    hotterH[hour + 1] = hotter;
    sumsC[hour + 1] = sumC;
  }
}

/** Does frost come on seedlings that show at an hour? null: not known. */
type FrostRule = (firstH: number) => boolean | null;

function frostRule({ crop }: Season, { minC, minFromH }: YearOfDates): FrostRule | null {
  const exposure = frostExposure(crop);
  if (exposure === null || !minC) return null;
  const { limitC, days: exposedDays } = exposure;
  // How many days ahead the next frost lies, from the last day back.
  const nextFrost = new Float64Array(minC.length + 1).fill(Infinity);
  for (let day = minC.length - 1; day >= 0; day--) nextFrost[day] = minC[day]! <= limitC ? 0 : nextFrost[day + 1]! + 1;
  return (firstH) => {
    const day = Math.floor((firstH - minFromH) / 24);
    if (day < 0 || day >= minC.length) return null;
    if (nextFrost[day]! <= exposedDays) return true;
    return day + exposedDays < minC.length ? false : null;
  };
}
