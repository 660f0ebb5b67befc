import type { Asker } from '../garden/ask.js';
import { type BedRows, keptInputs, keptOf } from '../garden/kept-soil.js';
import { knownSowing } from '../garden/known-sowing.js';
import type { CountedSowing, Sowing } from '../garden/season-store.js';
import { sowingState } from '../garden/sowing-state.js';
import type { Store } from '../garden/store.js';
import { whatToDo } from '../garden/what-to-do.js';
import { roundingFor } from './rounding.js';
import type { SowingAnswer } from './schemas/sowings.js';
import { sowingStateOnWire } from './wire-sowing.js';
import type { Unworded } from './worded.js';

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
