import { RequestError } from '../../basics/errors.js';
import { type QuotaError, type QuotaName, type Quotas, quotaNames } from '../../garden/quotas.js';
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

const QUOTA_WORDS: Record<QuotaName, string> = {
  places: 'places are kept',
  beds: 'beds are kept',
  sowings: 'sowings are kept',
  lots: 'seed lots are kept',
  plans: 'plans are kept',
  subscriptions: 'subscriptions are kept',
  thermometers: 'thermometers have readings in this bed',
  devices: 'devices belong to this bed',
  megabytes: 'megabytes of readings and air would be kept',
};

/** A full quota, as callers are told of it. */
export const quotaFull = ({ quota, limit, used }: QuotaError): RequestError =>
  new RequestError(
    'quota-full',
    `${used} ${QUOTA_WORDS[quota]}, and there may be ${limit}. Delete what is not needed any more, and send this again.`,
    [],
    {},
    { quota, limit, used },
  );
