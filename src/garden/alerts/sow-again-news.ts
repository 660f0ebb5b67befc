import type { PlainDate } from '../../basics/calendar.js';
import type { SowingNow } from '../sowing/known-now.js';
import { inBed, sownInBed } from './in-bed.js';
import type { News } from './news.js';

/** Which sowing was told of. */
interface Told {
  readonly sown: PlainDate;
}

/**
 * News of a bare row: it is to be sown again, once for each sowing. A grower who sows again under the same id
 * has another date, and may be told once more.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: nothing is known today, and what was told stands.
 */
export function sowAgainNews({ sowing, crop, forecast, triage }: SowingNow, told: string | null): News | undefined {
  if (!forecast) return undefined;
  const before = told === null ? null : (JSON.parse(told) as Told);
  if (before?.sown === sowing.date) return { mark: told, data: null };
  if (triage?.text.code !== 'do.sow-again') return { mark: null, data: null };
  const { isAlike: _, ...news } = triage.text.params;
  const { from, by } = news;
  return {
    mark: JSON.stringify({ sown: sowing.date } satisfies Told),
    data: {
      ...inBed(sowing, crop),
      from,
      by,
      text: { code: 'news.sow-again', params: { ...sownInBed(sowing, crop), ...news } },
    },
  };
}
