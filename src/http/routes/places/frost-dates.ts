import { z } from 'zod';
import { frostDatesOfPlace } from '../../../answers/windows/frost-dates.js';
import { frostAnswerSchema } from '../../../contract/places.js';
import { placeRows } from '../../../garden/bed/bed-records.js';
import { namingSources } from '../../../garden/bed/naming-sources.js';
import { attributionOf } from '../../../garden/store/source-presets.js';
import type { Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { queryOf, resourceNotFound } from '../../resource/resource.js';
import { placeIn } from './places.js';

const thresholdSchema = z.coerce.number().min(-20).max(20).default(0);
const frostQuery = z.strictObject({ threshold: thresholdSchema });

/** The route of a place's frost dates. */
export const frostDatesRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'GET',
    url: '/v1/places/:id/frost-dates',
    operation: {
      id: 'frostDates',
      summary: 'Dates of the last spring frost and the first autumn frost, at three risks',
      description: 'Dates at 10, 50 and 90 % risk need ten years of air or more; fewer years give only 50 %.',
      query: [
        {
          name: 'threshold',
          schema: thresholdSchema,
          description: 'A day whose minimum is this or below has a frost [°C].',
        },
      ],
      answer: { schema: frostAnswerSchema },
      problems: ['not-found', 'no-past-years', ...keptProblems],
    },
    async handler(request, reply) {
      const { threshold } = queryOf(frostQuery, request);
      const { id } = await placeIn(request, store);
      const owner = ownerOf(request);
      const rows = (await placeRows(store, owner, id, clock().getTime())) ?? notThere(id);
      const air = await store.air(owner, id);
      const { assumptions, warnings, ...found } = await namingSources(rows, async () =>
        frostDatesOfPlace(air, threshold, rows.place.latitude),
      );
      const attributions = air.length > 0 ? rows.credited.map(attributionOf) : [];
      const content = {
        ...found,
        ...(attributions.length > 0 && { attributions }),
        warnings: [...warnings, ...rows.sourceNotes],
      };
      return sendWithETag(request, reply, content, () =>
        signed({ ...content, assumptions: [...assumptions] }, clock()),
      );
    },
  },
];

/** The place was deleted meanwhile. */
function notThere(id: string): never {
  throw resourceNotFound('place', id);
}
