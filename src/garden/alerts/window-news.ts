import { addDays, type PlainDate } from '../../basics/calendar.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import type { WindowsNow } from '../sowing/known-now.js';
import type { News } from './news.js';

/** A window that opens so soon after the end of the one before is that one, whose end has moved [d]. */
const SAME_WINDOW_DAYS = 7;

interface ToldWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/**
 * News of a crop's windows in a bed: today lies in one, once for each opening; not on the
 * eve of nights that would kill what is sown, but after them.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: nothing is known today, and what was told stands.
 */
export function windowNews(known: WindowsNow, told: string | null): News | undefined {
  const { bed, crop, today, windows } = known;
  if (!windows) return undefined;
  const open = windows.find(({ from, to }) => from <= today && today <= to);
  if (!open) return { mark: told, data: null };
  const before = told === null ? null : (JSON.parse(told) as ToldWindow);
  const isSame = before !== null && open.from <= addDays(before.to, SAME_WINDOW_DAYS);
  if (!isSame && isBeforeKillingNight(known)) return { mark: told, data: null };
  // Asked for from today on, it seems to begin anew each day.
  const window = { from: isSame ? before.from : open.from, to: open.to };
  return {
    mark: JSON.stringify(window),
    data: isSame
      ? null
      : {
          bed,
          crop: crop.id,
          window,
          text: { code: 'news.window-open', params: { crop: cropInFacts(crop), bed, to: open.to } },
        },
  };
}

/** Any frost that is forecast is too cold a time for a tender crop; for others a night that their seedlings do not bear, once they are up. */
function isBeforeKillingNight({ crop, today, comingMinC, firstUp }: WindowsNow): boolean {
  const limitC = crop.growth?.seedlingFrostC;
  const since = crop.frost === 'tender' ? today : firstUp;
  if (limitC === undefined || since === null) return false;
  return comingMinC.some(({ date, minC }) => date >= since && minC <= limitC);
}
