import { usageAnswerSchema } from '../../../contract/usage.js';
import { type Quotas, quotaNames } from '../../../garden/store/quotas.js';
import type { Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { forPeople } from '../../negotiation/rounding.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { refuseQuery } from '../../resource/resource.js';

/** An owner's stored amounts and their limits. */
export const usageRoutes = (store: Store, quotas: Quotas, clock: () => Date): Route[] => [
  {
    method: 'GET',
    url: '/v1/usage',
    operation: {
      id: 'getUsage',
      summary: 'Your stored amounts and their limits',
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
