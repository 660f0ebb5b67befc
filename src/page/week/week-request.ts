import type { PageQuestion } from '../form/question.js';
import { type ApiRequest, pathWith } from '../shell/api.js';
import { bedNamed, type Inventory } from '../shell/inventory.js';

/** The request for the week of a stored bed, or of a town; null: neither is named. */
export function weekRequest({ bed, near, lastFrost }: PageQuestion, shelf: Inventory): ApiRequest | null {
  if (bedNamed(shelf, bed)) return { method: 'GET', path: pathWith('/v1/this-week', { bed }) };
  if (near.trim() === '') return null;
  return {
    method: 'GET',
    path: pathWith('/v1/this-week', { near: near.trim(), lastFrostAround: monthDayOf(lastFrost) }),
  };
}

/** Of a date field only month and day count: a last frost has no year. */
export const monthDayOf = (date: string): string => date.slice(5);
