import type { FastifyRequest } from 'fastify';
import type { SowingAnswer } from '../../../contract/sowings.js';
import type { BedRecords } from '../../../garden/bed/bed-records.js';
import type { WorkPort } from '../../../garden/sowing/work-port.js';
import type { CountedSowing } from '../../../garden/store/season-store.js';
import { ownerOf } from '../../auth/owner.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Service } from '../../question/endpoint.js';
import { sowingContent, sowingInputs } from './sowing-content.js';

/**
 * The same answer as GET /v1/sowings/{id}, from the same cache entry.
 *
 * @param bed The records of its bed.
 */
export async function cachedSowing(
  { store, answers }: Service,
  request: FastifyRequest,
  counted: CountedSowing,
  bed: BedRecords,
  { ask, now }: { readonly ask: WorkPort; readonly now: Date },
): Promise<SowingAnswer> {
  const owner = ownerOf(request);
  const { reader } = request;
  const { sowing } = counted;
  const body = await answers.body(
    { owner, reader },
    `/v1/sowings/${sowing.id}`,
    sowingInputs(sowing, bed),
    async () => {
      request.askedBy().takePlace?.();
      const content = await sowingContent(store, owner, counted, bed, { ask, now, precision: 'rounded' });
      return asJson(signed(content, now), { reader, isModelInFull: false });
    },
  );
  return JSON.parse(body.toString()) as SowingAnswer;
}
