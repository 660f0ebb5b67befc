import type { PlainDate } from '../../basics/calendar.js';
import type { Store } from '../store/store.js';
import type { BedInputs } from './bed-inputs.js';

/**
 * The coldest of each coming day's air over a bed [°C], as forecast: of all days that are told, be their place in the
 * record as it may. Over a bed that is indoors there is none.
 */
export async function comingMinima(
  store: Store,
  owner: string,
  { place, bedMake }: Pick<BedInputs, 'place' | 'bedMake'>,
): Promise<{ readonly date: PlainDate; readonly minC: number }[]> {
  const coming = bedMake?.kind === 'indoors' ? undefined : await store.comingDays(owner, place.id);
  return (coming?.days ?? []).flatMap(({ date, min }) => (min === null ? [] : { date, minC: min }));
}
