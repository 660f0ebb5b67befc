import { orAsKept } from '../../../contract/kept.js';
import { normalsAnswerSchema, normalsSchema } from '../../../contract/places.js';
import type { Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag, tagOf } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleNormals } from '../../question/examples.js';
import {
  asParameter,
  changeAsAllowed,
  isAskedAsKept,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { nothingYet, placeIn } from './places.js';

/** The routes of a place's climatological normals. */
export const placeNormalsRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'PUT',
    url: '/v1/places/:id/normals',
    operation: {
      id: 'putNormals',
      summary: 'Store the long-term monthly means of the daily maximum and minimum',
      json: {
        schema: normalsSchema,
        example: exampleNormals,
        readOnly: readOnlyOf(normalsSchema, normalsAnswerSchema),
      },
      answer: { schema: normalsAnswerSchema, mayCreate: true },
      ifMatch: true,
      ifNoneMatch: true,
      problems: ['not-found', ...changeProblems],
    },
    async handler(request, reply) {
      refuseQuery(request);
      const { id } = await placeIn(request, store);
      const owner = ownerOf(request);
      const normals = readPut(normalsSchema, normalsAnswerSchema, request.body);
      let isNew = (await store.normals(owner, id)) === undefined;
      const done = await changeAsAllowed(
        request,
        async () => {
          const place = await store.place(owner, id);
          const before = await store.normals(owner, id);
          isNew = before === undefined;
          return { revision: place?.revision ?? null, inputs: before && (() => before) };
        },
        (ifRevision) => store.putNormals(owner, id, normals, ifRevision),
      );
      if (!done) throw resourceNotFound('place', id);
      return reply
        .code(isNew ? 201 : 200)
        .header('etag', tagOf(normals))
        .send(signed({ ...done, ...normals }, clock()));
    },
  },
  {
    method: 'GET',
    url: '/v1/places/:id/normals',
    operation: {
      id: 'getNormals',
      summary: 'The long-term monthly means',
      query: [asParameter],
      answer: { schema: orAsKept(normalsAnswerSchema, normalsSchema) },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      const isAsKept = isAskedAsKept(request);
      const { id, revision } = await placeIn(request, store);
      const normals = await store.normals(ownerOf(request), id);
      if (!normals) throw nothingYet(id, 'normals');
      if (isAsKept) return sendAsKept(request, reply, revision, normals);
      return sendWithETag(request, reply, normals, () => signed({ revision, ...normals }, clock()));
    },
  },
];
