import { MIN_YEARS, yearsTold } from '../../answers/ahead/past-soil.js';
import type { SowingWindow } from '../../answers/windows/sowing-windows.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import type { GrownPlant } from './harvest.js';
import type { KnownSowing } from './known-sowing.js';
import type { MaturityDates } from './maturity.js';
import { type WorkPort, windowsAhead } from './work-port.js';

/** From the first date of a season that is still to come, or today, to its last. */
export interface Resowing {
  readonly from: PlainDate;
  readonly by: PlainDate;
}

/** Windows further apart than this are of two seasons [d]. */
const SEASON_GAP_DAYS = 90;

/** When a new sowing is good in place of one, or that it is too late; null: past years do not tell. */
export async function resowingOf(
  known: KnownSowing,
  ripe: (from: GrownPlant) => MaturityDates,
  ask: WorkPort,
): Promise<Resowing | 'too-late' | null> {
  const { kept, crop, question, sowing, today } = known;
  if (yearsTold(kept.series) < MIN_YEARS) return null;
  const { time, depthCm } = sowing;
  const isToCome = sowing.date > today;
  const from = isToCome ? sowing.date : today;
  // A window is a week or more: asked for from its last days on, it would be none.
  const found = await windowsAhead(kept, addDays(from, -7), { crop, time, depthCm, lot: question.lot }, ask);
  if ('why' in found || found.years.count === 0) return null;
  return resowingIn(found.windows, from, worthSowing(known.crop, ripe));
}

/** Published days are stretched at most so far before a sowing is one for another season. Our assumption. */
const MAX_STRETCH = 1.5;

/** Is what is sown on a date ready in the same season, before frost ends it? Of a crop nobody knows the days of: yes. */
function worthSowing(
  crop: Crop,
  ripe: (from: GrownPlant) => MaturityDates,
): (date: PlainDate, halfDays: number) => boolean {
  const untilFit = crop.maturity?.countedFrom === 'planting-out' ? 7 * (crop.weeksInTrays ?? 0) : null;
  return (date, halfDays) => {
    const half = addDays(date, Math.round(halfDays));
    const { harvest, why } = ripe({ half, plantedOut: untilFit === null ? null : addDays(half, untilFit) });
    if (why) return false;
    const publishedDays = (crop.maturity?.fromDays ?? 0) + (untilFit === null ? 0 : halfDays + untilFit);
    return !harvest || daysBetween(date, harvest.from) <= MAX_STRETCH * publishedDays;
  };
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
