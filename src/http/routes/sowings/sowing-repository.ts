import { bedRows } from '../../../garden/bed/bed-records.js';
import type { CountedSowing, KeptCount, Sowing, SowingFields } from '../../../garden/store/season-store.js';
import { workPortOf } from '../../../worker/work-port-of.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import type { Service } from '../../question/endpoint.js';
import { noSuch, type Repository, resourceNotFound, type ShownResource } from '../../resource/resource.js';
import { refuseAgainstCounts } from './refuse-against-counts.js';
import { sowingContent, sowingInputs } from './sowing-content.js';
import { serializeSowingPart } from './sowing-serializer.js';

/** How sowings are stored and shown to a caller. */
export function sowingsFor(service: Service, by: AskedBy): Repository<Sowing, SowingFields> {
  const { store } = service;
  let counts: readonly KeptCount[] = [];
  return {
    find: async (owner, id) => (await store.sowing(owner, id))?.sowing,
    async put(owner, id, fields, ifRevision) {
      counts = (await store.sowing(owner, id))?.counts ?? [];
      refuseAgainstCounts(counts, fields);
      // A caller over the limit is refused before anything is stored.
      await by.admit?.();
      const done = await store.putSowing(owner, id, fields, ifRevision);
      if (done.outcome === 'no-bed') throw noSuch('bed', fields.bed);
      if (done.outcome === 'no-lot') throw noSuch('lot', fields.lot!);
      return done;
    },
    async show({ id }, owner) {
      const counted = await store.sowing(owner, id);
      if (!counted) throw resourceNotFound('sowing', id);
      // The stored change stands, however busy the service is: a refusal would mean that nothing was changed.
      return showSowing(service, counted, by, { precision: 'rounded', canDoWithout: true });
    },
    showInPart: (sowing, why) => serializeSowingPart(sowing, counts, why),
  };
}

/**
 * One sowing, with its state.
 *
 * @param canDoWithout True if the state may be left out while the service is busy.
 */
export async function showSowing(
  { store, clock, work }: Service,
  counted: CountedSowing,
  by: AskedBy,
  { precision, canDoWithout }: { readonly precision: 'rounded' | 'full'; readonly canDoWithout: boolean },
): Promise<ShownResource> {
  const { owner } = by;
  const now = clock();
  const rows = await bedRows(store, owner, counted.sowing.bed, now.getTime());
  // The bed was deleted meanwhile.
  if (!rows) throw resourceNotFound('sowing', counted.sowing.id);
  return {
    inputs: sowingInputs(counted.sowing, rows),
    answer() {
      by.takePlace?.();
      const ask = { ...workPortOf(work, by), canDoWithout };
      return sowingContent(store, owner, counted, rows, { ask, now, precision });
    },
  };
}
