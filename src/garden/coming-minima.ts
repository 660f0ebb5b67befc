import type { PlainDate } from '../basics/calendar.js';
import type { Store } from './store.js';

/** The coldest of each coming day's air [°C], as forecast: of all days that are told, be their place in the record as it may. */
export async function comingMinima(
  store: Store,
  owner: string,
  place: string,
): Promise<{ readonly date: PlainDate; readonly minC: number }[]> {
  const coming = await store.comingDays(owner, place);
  return (coming?.days ?? []).flatMap(({ date, min }) => (min === null ? [] : { date, minC: min }));
}
