import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { notUnderstood } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { precisionSchema } from '../../../contract/common.js';
import { orAsKept } from '../../../contract/kept.js';
import { sowingAnswerSchema, sowingPatchSchema, sowingPutSchema } from '../../../contract/sowings.js';
import type { CountedSowing, Sowing, SowingFields } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { chosenCrop, isSameCrop } from '../../../germination/crop-choice.js';
import { ownerOf } from '../../auth/owner.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';
import { exampleSowing } from '../../question/examples.js';
import { read } from '../../question/read.js';
import { fieldsAfter, patchOperation, putOperation } from '../../resource/change-routes.js';
import {
  asParameter,
  asQueryShape,
  fieldsOf,
  idIn,
  keptIn,
  putAndAnswer,
  queryOf,
  readPut,
  refuseQuery,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteRoute } from '../../resource/resource-routes.js';
import { sowingListRoute } from './sowing-list.js';
import { showSowing, sowingsFor } from './sowing-repository.js';
import { serializeSowing } from './sowing-serializer.js';

const sowingQuery = z.strictObject({ precision: precisionSchema, ...asQueryShape });
const precisionParameter = { name: 'precision', schema: precisionSchema };
const sowingSchemas = {
  kind: 'sowing',
  put: sowingPutSchema,
  answer: sowingAnswerSchema,
  problems: ['unknown-bed', 'unknown-lot', 'unknown-crop', 'busy'],
} as const;

/** The routes of sowings, their state and counts. */
export const sowingRoutes = (service: Service): Route[] => [
  sowingListRoute(service),
  putSowing(service),
  changeSowing(service),
  getSowing(service),
  deleteRoute(
    'sowing',
    'Delete a sowing and its counts',
    ({ askedBy }) => sowingsFor(service, askedBy()),
    service.store.deleteSowing,
  ),
];

const putSowing = (service: Service): Route => ({
  method: 'PUT',
  url: '/v1/sowings/:id',
  operation: putOperation({
    ...sowingSchemas,
    summary: 'Store or replace a sowing, and get its state; its counts stay',
    example: exampleSowing,
  }),
  async handler(request, reply) {
    refuseQuery(request);
    const id = idIn(request, 'sowing');
    const fields = readPut(sowingPutSchema, sowingAnswerSchema, request.body);
    await refuseOtherCrop(service.store, ownerOf(request), fields);
    return putAndAnswer(request, reply, id, sowingsFor(service, request.askedBy()), () => fields, service.clock);
  },
});

const changeSowing = (service: Service): Route => {
  const change = {
    ...sowingSchemas,
    summary: 'Change some fields of a sowing',
    patch: sowingPatchSchema,
    example: { seeds: 150 },
    onWire: serializeSowing,
  };
  return {
    method: 'PATCH',
    url: '/v1/sowings/:id',
    operation: patchOperation(change),
    async handler(request, reply) {
      refuseQuery(request);
      const id = idIn(request, 'sowing');
      const changes = read(sowingPatchSchema, request.body);
      const sowings = sowingsFor(service, request.askedBy());
      const changed = (before: Sowing | undefined): SowingFields => fieldsAfter(change, id, before, changes);
      const owner = ownerOf(request);
      await refuseOtherCrop(service.store, owner, changed(await sowings.find(owner, id)));
      return putAndAnswer(request, reply, id, sowings, changed, service.clock);
    },
  };
};

const getSowing = (service: Service): Route => ({
  method: 'GET',
  url: '/v1/sowings/:id',
  operation: {
    id: 'getSowing',
    summary: 'One sowing: its forecast from the bed’s latest readings, its state, and what to do',
    query: [precisionParameter, asParameter],
    answer: { schema: orAsKept(sowingAnswerSchema, sowingPutSchema) },
    problems: ['not-found', 'busy', ...keptProblems],
  },
  async handler(request, reply) {
    const { store, clock, answers } = service;
    const { precision, as } = queryOf(sowingQuery, request);
    const counted = await countedIn(request, store);
    if (as === 'kept') {
      const { sowing } = counted;
      return sendAsKept(request, reply, sowing.revision, fieldsOf(sowingPutSchema, serializeSowing(sowing)));
    }
    const by = request.askedBy();
    const { inputs, answer } = await showSowing(service, counted, by, { precision, canDoWithout: false });
    return answers.send({ request, reply, owner: ownerOf(request) }, inputs, async () =>
      asJson(signed(await answer(), clock()), request),
    );
  },
});

/** The sowing in a request's path, with its counts. @throws {RequestError} `not-found`. */
export const countedIn = (request: FastifyRequest, store: Store): Promise<CountedSowing> =>
  keptIn(request, 'sowing', store.sowing);

/** Refuses an unknown crop, and a lot of another crop. @throws {RequestError} `unknown-crop`, `not-understood`. */
async function refuseOtherCrop(store: Store, owner: string, fields: SowingFields): Promise<void> {
  chosenCrop(fields.crop);
  const lot = fields.lot === null ? undefined : await store.lot(owner, fields.lot);
  if (!lot || isSameCrop(lot.crop, fields.crop)) return;
  const crop = typeof lot.crop === 'string' ? lot.crop : 'a crop of your own rows';
  throw notUnderstood([{ path: ['lot'], detail: fieldFact('field.other-crops-lot', { lot: lot.id, crop }) }]);
}
