import type { SowingAnswer } from '../../../contract/sowings.js';
import { inputsOfRows } from '../../../garden/bed/bed-inputs.js';
import { type BedRecords, bedInputsIn } from '../../../garden/bed/bed-records.js';
import { knownSowing } from '../../../garden/sowing/known-sowing.js';
import { sowingState } from '../../../garden/sowing/sowing-state.js';
import { whatToDo } from '../../../garden/sowing/what-to-do.js';
import type { WorkPort } from '../../../garden/sowing/work-port.js';
import type { CountedSowing, Sowing } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { roundingFor } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { credited } from '../../question/credited.js';
import { serializeSowingState } from './sowing-serializer.js';

/**
 * Everything that an answer about a sowing depends on except its rounding, so that If-Match takes either of its tags.
 */
export const sowingInputs = ({ id, revision }: Sowing, rows: BedRecords): object => ({
  sowing: [id, revision],
  ...bedInputsIn(rows),
});

/**
 * A sowing with its state, from its bed's temperatures.
 *
 * @param rows The bed's records.
 */
export async function sowingContent(
  store: Store,
  owner: string,
  counted: CountedSowing,
  rows: BedRecords,
  { ask, now, precision }: { readonly ask: WorkPort; readonly now: Date; readonly precision: 'rounded' | 'full' },
): Promise<Omit<Unworded<SowingAnswer>, 'model' | 'issuedAt'>> {
  const kept = await inputsOfRows(store, owner, rows);
  const known = await knownSowing(store, owner, counted, kept, now);
  const state = await sowingState(known, ask);
  return credited(serializeSowingState(known, state, whatToDo(known, state), roundingFor(precision)), kept);
}
