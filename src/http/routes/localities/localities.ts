import { z } from 'zod';
import { notUnderstood } from '../../../basics/errors.js';
import { countrySchema, localitiesSchema, nearSchema } from '../../../contract/localities.js';
import { localityRefusal } from '../../../localities/locality-facts.js';
import { nearest } from '../../../localities/nearest.js';
import type { Localities } from '../../../localities/open-localities.js';
import { search } from '../../../localities/search.js';
import { localitySource } from '../../../localities/source.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { read } from '../../question/read.js';

const latitudeSchema = z.coerce.number().min(-90).max(90).describe('North positive [°].');
const longitudeSchema = z.coerce.number().min(-180).max(180).describe('East positive [°].');
const limitSchema = z.coerce.number().int().min(1).max(50).default(10);

const query = z.strictObject({
  q: nearSchema.optional(),
  country: countrySchema.optional(),
  latitude: latitudeSchema.optional(),
  longitude: longitudeSchema.optional(),
  limit: limitSchema,
});

const inQuery = (path: readonly (string | number)[]) => ({ parameter: String(path[0] ?? '') });

/** The route to look up towns. */
export const localityRoutes = (localities: () => Promise<Localities>, clock: () => Date): Route[] => [
  {
    method: 'GET',
    url: '/v1/localities',
    operation: {
      id: 'listLocalities',
      summary: 'Towns by name, or near a point, with their coordinates, height and time zone',
      description:
        'Offline. Of a name: those that have it, those that begin with it, and where there are none those that differ in one letter; the likeliest first. Names: © GeoNames, CC BY 4.0.',
      query: [
        { name: 'q', schema: nearSchema },
        { name: 'country', schema: countrySchema },
        { name: 'latitude', schema: z.number().min(-90).max(90), description: 'With `longitude`, instead of `q`.' },
        { name: 'longitude', schema: z.number().min(-180).max(180) },
        { name: 'limit', schema: z.int().min(1).max(50).default(10) },
      ],
      answer: { schema: localitiesSchema },
      problems: ['not-understood'],
    },
    async handler(request, reply) {
      const { q, country, latitude, longitude, limit } = read(query, request.query, inQuery);
      const isPoint = latitude !== undefined && longitude !== undefined;
      const isOther = latitude !== undefined || longitude !== undefined;
      if (q === undefined ? !isPoint : isOther) {
        const parameter = q === undefined && isOther ? (latitude === undefined ? 'latitude' : 'longitude') : 'q';
        throw notUnderstood([
          {
            parameter,
            detail: localityRefusal('not-understood.locality-question', {
              fault: q === undefined ? 'missing' : 'both',
            }),
          },
        ]);
      }
      const { index } = await localities();
      const inCountry = country?.toUpperCase();
      const found = isPoint
        ? nearest(index, latitude, longitude, limit, inCountry).map(({ km, ...one }) => ({
            ...one,
            match: 'nearest' as const,
            km: Math.round(km * 10) / 10,
          }))
        : search(index, q!, limit, inCountry);
      const answer = { localities: found, source: localitySource(index) };
      reply.header('cache-control', 'public, max-age=3600');
      return sendWithETag(request, reply, answer, () => signed(answer, clock()));
    },
  },
];
