import { type Quotas, quotaNames } from '../../garden/quotas.js';
import type { Store } from '../../garden/store.js';
import { refuseQuery } from '../kept.js';
import { signed } from '../model.js';
import { ownerOf } from '../owner.js';
import { forPeople } from '../rounding.js';
import type { Route } from '../route.js';
import { usageAnswerSchema } from '../schemas/usage.js';
import { keptProblems } from '../usual-problems.js';

/** How much an owner keeps, and may keep. */
export const usageRoutes = (store: Store, quotas: Quotas, clock: () => Date): Route[] => [
  {
    method: 'GET',
    url: '/v1/usage',
    operation: {
      id: 'getUsage',
      summary: 'How much you keep, and how much you may',
      answer: { schema: usageAnswerSchema },
      problems: keptProblems,
    },
    async handler(request) {
      refuseQuery(request);
      const usage = await store.usage(ownerOf(request));
      const told = quotaNames.map((name) => [name, { used: forPeople.days(usage[name]), limit: quotas[name] }]);
      return signed({ quotas: Object.fromEntries(told) }, clock());
    },
  },
];
