import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { addDays } from '../../../basics/calendar.js';
import { type Fault, notUnderstood } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { precisionSchema } from '../../../contract/common.js';
import { orAsKept } from '../../../contract/kept.js';
import { sowingAnswerSchema, sowingPatchSchema, sowingPutSchema } from '../../../contract/sowings.js';
import { bedRows } from '../../../garden/bed/bed-inputs.js';
import type { Count, CountedSowing, KeptCount, Sowing, SowingFields } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { chosenCrop, isSameCrop } from '../../../germination/crop-choice.js';
import { MAX_COUNT_DAYS } from '../../../germination/run/count-day.js';
import { workPortOf } from '../../../worker/work-port-of.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import { ownerOf } from '../../auth/owner.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';
import { exampleSowing } from '../../question/examples.js';
import { read } from '../../question/read.js';
import {
  asParameter,
  asQueryShape,
  fieldsOf,
  idIn,
  noSuch,
  putAndAnswer,
  queryOf,
  type Repository,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  type ShownResource,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteRoute } from '../../resource/resource-routes.js';
import { sowingContent, sowingInputs } from './sowing-content.js';
import { sowingListRoute } from './sowing-list.js';
import { serializeSowing, serializeSowingPart } from './sowing-serializer.js';

const precisionParameter = { name: 'precision', schema: precisionSchema };

/** What a grower sowed, how it stands, and what was counted. */
export const sowingRoutes = (service: Service): Route[] => {
  const { store, clock, work, answers } = service;
  const show = async (
    counted: CountedSowing,
    by: AskedBy,
    precision: 'rounded' | 'full',
    canDoWithout = false,
  ): Promise<ShownResource> => {
    const { owner } = by;
    const now = clock();
    const rows = await bedRows(store, owner, counted.sowing.bed, now.getTime());
    // Its bed went while we looked.
    if (!rows) throw resourceNotFound('sowing', counted.sowing.id);
    return {
      inputs: sowingInputs(counted.sowing, rows),
      answer() {
        by.takePlace?.();
        const ask = { ...workPortOf(work, by), canDoWithout };
        return sowingContent(store, owner, counted, rows, { ask, now, precision });
      },
    };
  };
  const keeperFor = (by: AskedBy): Repository<Sowing, SowingFields> => {
    let counts: readonly KeptCount[] = [];
    return {
      find: async (owner, id) => (await store.sowing(owner, id))?.sowing,
      async put(owner, id, fields, ifRevision) {
        counts = (await store.sowing(owner, id))?.counts ?? [];
        refuseAgainst(counts, fields);
        // Whoever asks too much is told so before anything is kept.
        await by.admit?.();
        const done = await store.putSowing(owner, id, fields, ifRevision);
        if (done.outcome === 'no-bed') throw noSuch('bed', fields.bed);
        if (done.outcome === 'no-lot') throw noSuch('lot', fields.lot!);
        return done;
      },
      async show({ id }, owner) {
        const counted = await store.sowing(owner, id);
        if (!counted) throw resourceNotFound('sowing', id);
        // What was kept stays kept, however busy the service is: a refusal would say that nothing was changed.
        return show(counted, by, 'rounded', true);
      },
      showInPart: (sowing, why) => serializeSowingPart(sowing, counts, why),
    };
  };
  const checked = async (owner: string, fields: SowingFields): Promise<SowingFields> => {
    chosenCrop(fields.crop);
    const lot = fields.lot === null ? undefined : await store.lot(owner, fields.lot);
    if (lot && !isSameCrop(lot.crop, fields.crop)) {
      const crop = typeof lot.crop === 'string' ? lot.crop : 'a crop of your own rows';
      throw notUnderstood([{ path: ['lot'], detail: fieldFact('field.other-crops-lot', { lot: lot.id, crop }) }]);
    }
    return fields;
  };
  return [
    sowingListRoute(service),
    {
      method: 'PUT',
      url: '/v1/sowings/:id',
      operation: {
        id: 'putSowing',
        summary: 'Keep a sowing, or replace it, and see how it stands; its counts stay',
        json: {
          schema: sowingPutSchema,
          example: exampleSowing,
          readOnly: readOnlyOf(sowingPutSchema, sowingAnswerSchema),
        },
        answer: { schema: sowingAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: ['unknown-bed', 'unknown-lot', 'unknown-crop', 'busy', ...changeProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'sowing');
        const fields = await checked(ownerOf(request), readPut(sowingPutSchema, sowingAnswerSchema, request.body));
        return putAndAnswer(request, reply, id, keeperFor(request.askedBy()), () => fields, clock);
      },
    },
    {
      method: 'PATCH',
      url: '/v1/sowings/:id',
      operation: {
        id: 'changeSowing',
        summary: 'Change some of what is kept of a sowing',
        json: { schema: sowingPatchSchema, example: { seeds: 150 } },
        answer: { schema: sowingAnswerSchema },
        ifMatch: true,
        problems: ['not-found', 'unknown-bed', 'unknown-lot', 'unknown-crop', 'busy', ...changeProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'sowing');
        const changes = read(sowingPatchSchema, request.body);
        const keeper = keeperFor(request.askedBy());
        const now = await keeper.find(ownerOf(request), id);
        if (!now) throw resourceNotFound('sowing', id);
        const changed = (before: Sowing | undefined): SowingFields => {
          if (!before) throw resourceNotFound('sowing', id);
          return read(sowingPutSchema, { ...fieldsOf(sowingPutSchema, serializeSowing(before)), ...changes });
        };
        await checked(ownerOf(request), changed(now));
        return putAndAnswer(request, reply, id, keeper, changed, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/sowings/:id',
      operation: {
        id: 'getSowing',
        summary: 'One sowing: its forecast from the bed’s latest readings, how it stands, and what to do',
        query: [precisionParameter, asParameter],
        answer: { schema: orAsKept(sowingAnswerSchema, sowingPutSchema) },
        problems: ['not-found', 'busy', ...keptProblems],
      },
      async handler(request, reply) {
        const { precision, as } = queryOf(sowingQuery, request);
        const counted = await countedIn(request, store);
        if (as === 'kept') {
          const { sowing } = counted;
          return sendAsKept(request, reply, sowing.revision, fieldsOf(sowingPutSchema, serializeSowing(sowing)));
        }
        const { inputs, answer } = await show(counted, request.askedBy(), precision);
        return answers.send({ request, reply, owner: ownerOf(request) }, inputs, async () =>
          asJson(signed(await answer(), clock()), request),
        );
      },
    },
    deleteRoute('sowing', 'Delete a sowing and its counts', ({ askedBy }) => keeperFor(askedBy()), store.deleteSowing),
  ];
};

const sowingQuery = z.strictObject({ precision: precisionSchema, ...asQueryShape });

/** The sowing that a request's path names, with its counts. @throws {RequestError} `not-found`. */
export async function countedIn(request: FastifyRequest, store: Store): Promise<CountedSowing> {
  const id = idIn(request, 'sowing');
  const counted = await store.sowing(ownerOf(request), id);
  if (!counted) throw resourceNotFound('sowing', id);
  return counted;
}

/** Refuses a change after which what was counted could not have come of the sowing. @throws {RequestError} `not-understood`. */
function refuseAgainst(counts: readonly Count[], { date, seeds }: SowingFields): void {
  const [first, last] = [counts[0], counts.at(-1)];
  if (!first || !last) return;
  const faults: Fault[] = [];
  if (date > first.date) {
    faults.push({
      path: ['date'],
      detail: fieldFact('field.after-first-count', { countedOn: first.date }),
    });
  }
  if (last.date > addDays(date, MAX_COUNT_DAYS)) {
    faults.push({
      path: ['date'],
      detail: fieldFact('field.long-before-count', { maxDays: MAX_COUNT_DAYS, countedOn: last.date }),
    });
  }
  const whole = counts.filter(({ ofSeeds }) => ofSeeds === null);
  const most = Math.max(
    0,
    ...whole.map(({ seedlings, thinned }) => seedlings + (typeof thinned === 'number' ? thinned : 0)),
  );
  if (most > (seeds ?? 0)) {
    faults.push({
      path: ['seeds'],
      detail: fieldFact('field.fewer-than-counted', { seedlings: most }),
    });
  }
  if (faults.length > 0) throw notUnderstood(faults);
}
