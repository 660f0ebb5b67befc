import { z } from 'zod';
import { frostDatesOfPlace } from '../../../answers/windows/frost-dates.js';
import { frostAnswerSchema } from '../../../contract/places.js';
import type { Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { queryOf } from '../../resource/resource.js';
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
      const { id, latitude } = await placeIn(request, store);
      const { assumptions, ...content } = frostDatesOfPlace(await store.air(ownerOf(request), id), threshold, latitude);
      return sendWithETag(request, reply, content, () =>
        signed({ ...content, assumptions: [...assumptions], warnings: [...content.warnings] }, clock()),
      );
    },
  },
];
