import type { SowingAnswer } from '../../../contract/sowings.js';
import { type BedRows, keptInputs, keptOf } from '../../../garden/bed/kept-soil.js';
import type { Asker } from '../../../garden/sowing/ask.js';
import { knownSowing } from '../../../garden/sowing/known-sowing.js';
import { sowingState } from '../../../garden/sowing/sowing-state.js';
import { whatToDo } from '../../../garden/sowing/what-to-do.js';
import type { CountedSowing, Sowing } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { roundingFor } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { sowingStateOnWire } from './wire-sowing.js';

/** All that an answer about a sowing depends on but its rounding, so that either of its tags goes with If-Match. */
export const sowingInputs = ({ id, revision }: Sowing, rows: BedRows): object => ({
  sowing: [id, revision],
  ...keptInputs(rows),
});

/**
 * A sowing, and how it stands, from its bed's temperatures.
 *
 * @param rows Those of its bed.
 */
export async function sowingContent(
  store: Store,
  owner: string,
  counted: CountedSowing,
  rows: BedRows,
  { ask, now, precision }: { readonly ask: Asker; readonly now: Date; readonly precision: 'rounded' | 'full' },
): Promise<Omit<Unworded<SowingAnswer>, 'model' | 'issuedAt'>> {
  const known = await knownSowing(store, owner, counted, await keptOf(store, owner, rows), now);
  const state = await sowingState(known, ask);
  return sowingStateOnWire(known, state, whatToDo(known, state), roundingFor(precision));
}
