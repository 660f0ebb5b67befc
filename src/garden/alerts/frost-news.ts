import { addDays, type PlainDate } from '../../basics/calendar.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';
import type { SowingNow } from '../sowing/known-now.js';
import { inBed, sownInBed } from './in-bed.js';
import type { News } from './news.js';

/**
 * What is new of the frost ahead of a sowing: nights that would harm seedlings which are up, or may be up by then, and
 * were not told of. Hardy crops have nothing to fear, nor have sowings indoors until they are planted out.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: nothing is known today, and what was told stands.
 */
export function frostNews(
  { sowing, crop, today, forecast, plantOut, comingMinC }: SowingNow,
  told: string | null,
): News | undefined {
  if (!forecast) return undefined;
  const known = told === null ? [] : (JSON.parse(told) as PlainDate[]).filter((date) => date >= today);
  const exposure = frostExposure(crop);
  const { first } = forecast.emergence;
  const exposed =
    sowing.method === 'indoors'
      ? plantOut && { from: plantOut, since: plantOut }
      : 'date' in first && { from: first.range.from, since: first.date };
  const nights =
    exposure && exposed
      ? comingMinC.filter(
          ({ date, minC }) =>
            date >= today &&
            minC <= exposure.limitC &&
            exposed.from <= date &&
            date <= addDays(exposed.since, exposure.days),
        )
      : [];
  const added = nights.filter(({ date }) => !known.includes(date));
  const dates = [...known, ...added.map(({ date }) => date)].sort();
  const mark = dates.length === 0 ? null : JSON.stringify(dates);
  const [next] = added;
  if (!next) return { mark, data: null };
  return {
    mark,
    data: {
      ...inBed(sowing, crop),
      nights,
      text: {
        code: 'news.frost',
        params: { ...sownInBed(sowing, crop), date: next.date, minC: tenth(next.minC), nights: nights.length },
      },
    },
  };
}

/** To a tenth; a little below 0 is 0, not -0. */
const tenth = (tempC: number): number => Math.round(10 * tempC) / 10 + 0;
