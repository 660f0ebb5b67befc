import { MIN_YEARS, seriesOfYears, yearsTold } from '../../answers/ahead/past-soil.js';
import { usualCriteria } from '../../answers/windows/dates-in-years.js';
import type { HarvestDates } from '../../answers/windows/harvest-dates.js';
import type { SowingWindow, SowingWindows } from '../../answers/windows/sowing-windows.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { chosenCrop } from '../../germination/crop-choice.js';
import type { KnownSowing } from './known-sowing.js';
import type { HarvestOdds } from './triage-rule.js';
import { type WorkPort, windowsAhead } from './work-port.js';

/** From the first date of a season that is still to come, or today, to its last. */
export interface Resowing {
  readonly from: PlainDate;
  readonly by: PlainDate;
}

/** Windows further apart than this are of two seasons [d]. */
const SEASON_GAP_DAYS = 90;

/** Past years' judgement on sowing a crop in a bed, in the season of a date: that of sowing windows. */
export interface SeasonAhead {
  readonly resowing: Resowing | 'too-late';
  /** The odds of a harvest by the date of a sowing; good dates are alike, as between them odds differ by chance. */
  readonly odds: HarvestOdds;
  /** The harvest of a sowing on a date; null: it has none, or it is unknown. */
  readonly harvestOf: (date: PlainDate) => HarvestDates | null;
}

/** A new sowing: crop and bed. */
export interface Resown {
  readonly known: Pick<KnownSowing, 'kept' | 'question' | 'sowing' | 'today'>;
  readonly crop: Crop;
}

/** A window is a week or more: asked for from its last days on, it would be none [d]. */
const WEEK_DAYS = 7;

/** When a new sowing is good in place of one, or that it is too late; null: past years do not tell. */
export async function seasonAhead({ known, crop }: Resown, ask: WorkPort): Promise<SeasonAhead | null> {
  const { sowing, today } = known;
  const from = [sowing.date, today].sort()[1]!;
  const found = await pastYearsOf({ known, crop }, addDays(from, -WEEK_DAYS), 364, ask);
  if (!found) return null;
  const byDate = new Map(found.dates.map((one) => [one.date, one]));
  return {
    resowing: resowingIn(found.windows, from),
    odds: (date) => Math.min(byDate.get(date)?.sureness ?? 0, usualCriteria.sureness),
    harvestOf: (date) => byDate.get(date)?.harvest ?? null,
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
  { known: { kept, question, sowing }, crop }: Resown,
  from: PlainDate,
  days: number,
  ask: WorkPort,
): Promise<SowingWindows | null> {
  if (yearsTold(seriesOfYears(kept)) < MIN_YEARS) return null;
  const isOwn = crop === question.crop;
  const toSow = { crop, time: sowing.time, depthCm: isOwn ? sowing.depthCm : null, lot: isOwn ? question.lot : null };
  const found = await windowsAhead(kept, from, toSow, ask, days);
  // A usual year, made from normals, tells of no odds.
  return 'why' in found || found.dates[0]?.sureness === null ? null : found;
}

/** Quick crops that still fit where another has become too late: common practice, no source. */
const QUICK_CROPS = ['radish', 'lettuce', 'spinach'] as const;
/** A crop fits if it can be sown within this time [d]. */
const FITS_WITHIN_DAYS = 14;

/** Which quick crops can be sown in a bed within two weeks, where a row's own season is over. */
export async function fittingCrops(known: KnownSowing, ask: WorkPort): Promise<Crop[]> {
  const { crop: own, today } = known;
  const fitting: Crop[] = [];
  for (const crop of QUICK_CROPS.map(chosenCrop)) {
    if (crop.id === own.id) continue;
    const found = await pastYearsOf({ known, crop }, addDays(today, -WEEK_DAYS), 5 * WEEK_DAYS, ask);
    const resowing = found && resowingIn(found.windows, today);
    if (resowing && resowing !== 'too-late' && resowing.from <= addDays(today, FITS_WITHIN_DAYS)) fitting.push(crop);
  }
  return fitting;
}

/**
 * When there is time for a new sowing in the season of a date: of windows that a summer's heat parts, the last ends it.
 *
 * @param windows From about that date on, in the order of time; they close where no harvest is had any more.
 */
export function resowingIn(
  windows: readonly Pick<SowingWindow, 'from' | 'to'>[],
  date: PlainDate,
): Resowing | 'too-late' {
  const open = windows.filter(({ to }) => to >= date);
  const end = open.findIndex(({ from }, i) => daysBetween(open[i - 1]?.to ?? date, from) > SEASON_GAP_DAYS);
  const inSeason = end < 0 ? open : open.slice(0, end);
  const [first, last] = [inSeason[0], inSeason.at(-1)];
  return first && last ? { from: [first.from, date].sort()[1]!, by: last.to } : 'too-late';
}

/** The last date on which a new sowing is still good; null where there is none this season, or nobody knows. */
export const resowByOf = (resowing: Resowing | 'too-late' | null): PlainDate | null =>
  resowing === null || resowing === 'too-late' ? null : resowing.by;
