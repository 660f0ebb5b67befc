import { MIN_YEARS, yearsTold } from '../../answers/ahead/past-soil.js';
import { usualCriteria } from '../../answers/windows/dates-in-years.js';
import type { SowingWindow, SowingWindows } from '../../answers/windows/sowing-windows.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { chosenCrop } from '../../germination/crop-choice.js';
import type { GrownPlant, Harvest } from './harvest.js';
import type { KnownSowing } from './known-sowing.js';
import { type MaturityDates, maturityIn } from './maturity.js';
import type { HarvestOdds } from './triage-rule.js';
import { type WorkPort, windowsAhead } from './work-port.js';

/** From the first date of a season that is still to come, or today, to its last. */
export interface Resowing {
  readonly from: PlainDate;
  readonly by: PlainDate;
}

/** Windows further apart than this are of two seasons [d]. */
const SEASON_GAP_DAYS = 90;

/** Past years' judgement on sowing a crop in a bed, in the season of a date. */
export interface SeasonAhead {
  readonly resowing: Resowing | 'too-late';
  /** The odds of a harvest by the date of a sowing; good dates are alike, as between them odds differ by chance. */
  readonly odds: HarvestOdds;
  /** The harvest of a sowing on a date; null: it has none, or it is unknown. */
  readonly harvestOf: (date: PlainDate) => Harvest | null;
}

/** A new sowing: crop, bed, and the time of its harvest. */
export interface Resown {
  readonly known: Pick<KnownSowing, 'kept' | 'question' | 'sowing' | 'today'>;
  readonly crop: Crop;
  readonly ripe: (from: GrownPlant) => MaturityDates;
}

/** A window is a week or more: asked for from its last days on, it would be none [d]. */
const WEEK_DAYS = 7;

/** When a new sowing is good in place of one, or that it is too late; null: past years do not tell. */
export async function seasonAhead({ known, crop, ripe }: Resown, ask: WorkPort): Promise<SeasonAhead | null> {
  const { sowing, today } = known;
  const from = [sowing.date, today].sort()[1]!;
  const found = await pastYearsOf({ known, crop }, addDays(from, -WEEK_DAYS), 364, ask);
  if (!found) return null;
  const isWorth = worthSowing(crop, ripe);
  const byDate = new Map(found.dates.map((one) => [one.date, one]));
  const halfOn = (date: PlainDate): number | null => byDate.get(date)?.halfDays?.p50 ?? null;
  return {
    resowing: resowingIn(found.windows, from, isWorth),
    odds(date) {
      const half = halfOn(date);
      return half !== null && isWorth(date, half)
        ? Math.min(byDate.get(date)!.sureness ?? 0, usualCriteria.sureness)
        : 0;
    },
    harvestOf(date) {
      const half = halfOn(date);
      return half === null ? null : ripe(grownFrom(crop, date, half)).harvest;
    },
  };
}

/** The odds that a date was a good one to sow on; null: past years do not tell. */
export async function oddsOfDate(
  known: Resown['known'],
  crop: Crop,
  date: PlainDate,
  ask: WorkPort,
): Promise<number | null> {
  const found = await pastYearsOf({ known, crop }, addDays(date, -3), WEEK_DAYS - 1, ask);
  return found?.dates.find((one) => one.date === date)?.sureness ?? null;
}

/** The windows of a crop sown as a sowing was, over some days; null where past years do not tell. */
async function pastYearsOf(
  { known: { kept, question, sowing }, crop }: Pick<Resown, 'known' | 'crop'>,
  from: PlainDate,
  days: number,
  ask: WorkPort,
): Promise<SowingWindows | null> {
  if (yearsTold(kept.series) < MIN_YEARS) return null;
  const isOwn = crop === question.crop;
  const toSow = { crop, time: sowing.time, depthCm: isOwn ? sowing.depthCm : null, lot: isOwn ? question.lot : null };
  const found = await windowsAhead(kept, from, toSow, ask, days);
  return 'why' in found || found.years.count === 0 ? null : found;
}

/** Quick crops that still fit where another has become too late: common practice, no source. */
const QUICK_CROPS = ['radish', 'lettuce', 'spinach'] as const;
/** A crop fits if it can be sown within this time [d]. */
const FITS_WITHIN_DAYS = 14;

/** Which quick crops can be sown in a bed within two weeks, where a row's own season is over. */
export async function fittingCrops(known: KnownSowing, ask: WorkPort): Promise<Crop[]> {
  const { kept, crop: own, today } = known;
  const fitting: Crop[] = [];
  for (const crop of QUICK_CROPS.map(chosenCrop)) {
    if (crop.id === own.id) continue;
    const ripe = maturityIn({ crop, kept });
    const found = await pastYearsOf({ known, crop }, addDays(today, -WEEK_DAYS), 5 * WEEK_DAYS, ask);
    const resowing = found && resowingIn(found.windows, today, worthSowing(crop, ripe));
    if (resowing && resowing !== 'too-late' && resowing.from <= addDays(today, FITS_WITHIN_DAYS)) fitting.push(crop);
  }
  return fitting;
}

/** Published days are stretched at most so far before a sowing is one for another season. Our assumption. */
const MAX_STRETCH = 1.5;

/** Is what is sown on a date ready in the same season, before frost ends it? Of a crop nobody knows the days of: yes. */
function worthSowing(
  crop: Crop,
  ripe: (from: GrownPlant) => MaturityDates,
): (date: PlainDate, halfDays: number) => boolean {
  const untilFit = untilFitOf(crop);
  return (date, halfDays) => {
    const { harvest, why } = ripe(grownFrom(crop, date, halfDays));
    if (why) return false;
    const publishedDays = (crop.maturity?.fromDays ?? 0) + (untilFit === null ? 0 : halfDays + untilFit);
    return !harvest || daysBetween(date, harvest.from) <= MAX_STRETCH * publishedDays;
  };
}

/** From half emergence until it is fit to plant out [d]; null: it grows where it is sown. */
const untilFitOf = ({ maturity, weeksInTrays }: Crop): number | null =>
  maturity?.countedFrom === 'planting-out' ? 7 * (weeksInTrays ?? 0) : null;

/** A sowing on a date, half emerged after so many days. */
function grownFrom(crop: Crop, date: PlainDate, halfDays: number): GrownPlant {
  const half = addDays(date, Math.round(halfDays));
  const untilFit = untilFitOf(crop);
  return { half, plantedOut: untilFit === null ? null : addDays(half, untilFit) };
}

/**
 * When there is time for a new sowing in the season of a date: of windows that a summer's heat parts, the last ends it, or
 * earlier what would no more be ready.
 *
 * @param windows From about that date on, in the order of time.
 * @param isWorth Is what is sown on a date, and half up after so many days, ready in time?
 */
export function resowingIn(
  windows: readonly Pick<SowingWindow, 'from' | 'to' | 'halfDays'>[],
  date: PlainDate,
  isWorth: (date: PlainDate, halfDays: number) => boolean = () => true,
): Resowing | 'too-late' {
  const open = windows.filter(({ to }) => to >= date);
  const end = open.findIndex(({ from }, i) => daysBetween(open[i - 1]?.to ?? date, from) > SEASON_GAP_DAYS);
  const dates = (end < 0 ? open : open.slice(0, end)).flatMap(({ from, to, halfDays }) => {
    const first = from > date ? from : date;
    return Array.from({ length: daysBetween(first, to) + 1 }, (_, day) => addDays(first, day)).filter((one) =>
      isWorth(one, halfDays?.p50 ?? 0),
    );
  });
  const [first, last] = [dates[0], dates.at(-1)];
  return first && last ? { from: first, by: last } : 'too-late';
}

/** The last date on which a new sowing is still good; null where there is none this season, or nobody knows. */
export const resowByOf = (resowing: Resowing | 'too-late' | null): PlainDate | null =>
  resowing === null || resowing === 'too-late' ? null : resowing.by;
