import { z } from 'zod';
import { RequestError } from '../../../basics/errors.js';
import { precisionSchema } from '../../../contract/common.js';
import { type CropAnswer, type CropList, cropAnswerSchema, cropListSchema } from '../../../contract/crop.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { crops } from '../../../germination/crops.js';
import { tagOf } from '../../negotiation/etag.js';
import { asPicture, formOf, pictureOf, pictureParameters, wantsPicture } from '../../negotiation/picture.js';
import { renderCrop } from '../../negotiation/render-svg.js';
import { roundingFor } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import type { Service } from '../../question/endpoint.js';
import { read } from '../../question/read.js';
import { serializeCrop } from './crop-serializer.js';

const listQuery = z.strictObject({
  after: z.string().max(64).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(100),
  precision: precisionSchema,
});
const oneQuery = z.strictObject({ precision: precisionSchema });

const inQuery = (path: readonly (string | number)[]) => ({ parameter: String(path[0] ?? '') });

/** Crops change only with the service, so their tags need only one digest of them all. */
const edition = tagOf([...crops.values()]);
/** No owner's name is empty, so this cache key is no owner's. */
const EVERYBODY = '';
const FOR_ALL = 'public, max-age=3600';

/** The routes of crops. */
export const cropRoutes = ({ clock, answers }: Pick<Service, 'clock' | 'answers'>): Route[] => [
  {
    method: 'GET',
    url: '/v1/crops',
    operation: {
      id: 'listCrops',
      summary: 'All crops, with their rows, limits and cautions',
      query: [
        { name: 'after', schema: z.string().max(64), description: 'Return only ids after this one.' },
        { name: 'limit', schema: z.int().min(1).max(100).default(100) },
        { name: 'precision', schema: precisionSchema },
      ],
      answer: { schema: cropListSchema },
      problems: ['not-understood'],
    },
    handler(request, reply) {
      const asked = read(listQuery, request.query, inQuery);
      const { after, limit, precision } = asked;
      reply.header('cache-control', FOR_ALL);
      return answers.send({ request, reply, owner: EVERYBODY }, { edition, asked }, () => {
        const following = [...crops.values()]
          .filter((crop) => after === undefined || crop.id > after)
          .sort((a, b) => (a.id < b.id ? -1 : 1));
        const page = following.slice(0, limit);
        const rounding = roundingFor(precision);
        const list: Unworded<CropList> = signed(
          {
            crops: page.map((crop) => serializeCrop(crop, rounding)),
            next: following.length > limit ? page.at(-1)!.id : null,
          },
          clock(),
        );
        return asJson(list, request);
      });
    },
  },
  {
    method: 'GET',
    url: '/v1/crops/:id',
    operation: {
      id: 'getCrop',
      summary: 'One crop, as JSON or as a picture of its curve',
      query: [{ name: 'precision', schema: precisionSchema }, ...pictureParameters],
      answer: { schema: cropAnswerSchema, picture: true },
      problems: ['not-found', 'not-understood'],
    },
    handler(request, reply) {
      const { options, query } = pictureOf(request.query as Record<string, unknown>, request.reader);
      const { precision } = read(oneQuery, query, inQuery);
      const { id } = request.params as { id: string };
      const crop = crops.get(id);
      if (!crop) {
        throw new RequestError('not-found', keptRefusal('not-found.crop', { id }));
      }
      reply.header('cache-control', FOR_ALL);
      const inputs = { edition, id, precision, options, ...formOf(request) };
      return answers.send({ request, reply, owner: EVERYBODY }, inputs, () => {
        if (wantsPicture(request)) return asPicture(renderCrop(crop, options));
        const one: Unworded<CropAnswer> = signed(serializeCrop(crop, roundingFor(precision)), clock());
        return asJson(one, request);
      });
    },
  },
];
