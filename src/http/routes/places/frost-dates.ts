import { z } from 'zod';
import type { TableClimate } from '../../../answers/climate/table-climate.js';
import { type FrostAnswer, frostDatesOfPlace } from '../../../answers/windows/frost-dates.js';
import { dateAt } from '../../../basics/calendar.js';
import { RequestError } from '../../../basics/errors.js';
import { frostAnswerSchema } from '../../../contract/places.js';
import { climateHere } from '../../../garden/bed/bed-inputs.js';
import { placeRows } from '../../../garden/bed/bed-records.js';
import { namingSources } from '../../../garden/bed/naming-sources.js';
import { attributionOf } from '../../../garden/store/source-presets.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { forPeople } from '../../negotiation/rounding.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems, localeProblems } from '../../problems/common-problems.js';
import { documented, localeParameters } from '../../question/csv-query.js';
import { knownByQuery, type Service } from '../../question/endpoint.js';
import { located } from '../../question/located.js';
import { queryOf, resourceNotFound } from '../../resource/resource.js';
import { placeIn } from './places.js';

const thresholdSchema = z.coerce.number().min(-20).max(20).default(0);
const frostQuery = z.strictObject({ threshold: thresholdSchema });
const thresholdParameter = {
  name: 'threshold',
  schema: thresholdSchema,
  description: 'A day whose minimum is this or below has a frost [°C].',
};

/** The routes of frost dates. */
export const frostDatesRoutes = (service: Service): Route[] => [
  {
    method: 'GET',
    url: '/v1/places/:id/frost-dates',
    operation: {
      id: 'frostDates',
      summary: 'Dates of the last spring frost and the first autumn frost, at three risks',
      description:
        'Dates at 10, 50 and 90 % risk need ten years of air or more; fewer years give only 50 %. A place without any season of air is answered from the climate table.',
      query: [thresholdParameter],
      answer: { schema: frostAnswerSchema },
      problems: ['not-found', 'no-past-years', ...keptProblems],
    },
    async handler(request, reply) {
      const { store, clock } = service;
      const { threshold } = queryOf(frostQuery, request);
      const place = await placeIn(request, store);
      const owner = ownerOf(request);
      const rows = (await placeRows(store, owner, place.id, clock().getTime())) ?? notThere(place.id);
      const air = await store.air(owner, place.id);
      const { answer, climate } = await namingSources(rows, async () =>
        ofAirOr(
          () => frostDatesOfPlace(air, threshold, place.latitude),
          () => climateHere(store, place, rows.site, rows.today),
          threshold,
          place.latitude,
        ),
      );
      const attributions = air.length > 0 ? rows.credited.map(attributionOf) : [];
      const content = {
        ...answer,
        ...(attributions.length > 0 && { attributions }),
        assumptions: [...answer.assumptions, ...(climate?.assumptions ?? [])],
        warnings: [...answer.warnings, ...(climate?.warnings ?? []), ...rows.sourceNotes],
      };
      return sendWithETag(request, reply, content, () => signed(content, clock()));
    },
  },
  {
    method: 'GET',
    url: '/v1/frost-dates',
    operation: {
      id: 'frostDatesByLink',
      summary: 'The same of a town or of coordinates, from the climate table',
      query: [thresholdParameter, ...documented(localeParameters)],
      answer: { schema: frostAnswerSchema },
      problems: ['no-past-years', ...localeProblems, ...keptProblems],
    },
    async handler(request, reply) {
      const { threshold, ...query } = request.query as Record<string, unknown>;
      const { threshold: thresholdC } = queryOf(frostQuery, {
        query: threshold === undefined ? {} : { threshold },
      } as typeof request);
      const known = await knownByQuery(service, request, query);
      const { locale } = known;
      const { normals, airYears } = locale.climate;
      const answer = typicalFrost(locale.climate, thresholdC, locale.site.latitude);
      const question = { series: [], normals, typicalAir: airYears, site: locale.site };
      const content = located(answer, question, known, forPeople);
      const today = dateAt(service.clock().getTime(), locale.site.zone);
      return sendWithETag(request, reply, { query: request.query, today }, () => signed(content, service.clock()));
    },
  },
];

/** Frost dates of typical years. */
function typicalFrost({ airYears }: TableClimate, thresholdC: number, latitude: number): FrostAnswer {
  const { warnings, ...frost } = frostDatesOfPlace(airYears.days, thresholdC, latitude);
  // Nobody has read these days, so none of them was misread.
  return {
    ...frost,
    years: { from: null, to: null },
    warnings: warnings.filter(({ code }) => code !== 'doubtful-minimum'),
  };
}

/** Frost dates of a place's own air, else of its climate from the table. */
function ofAirOr(
  ofAir: () => FrostAnswer,
  climateOf: () => TableClimate | null,
  thresholdC: number,
  latitude: number,
): { readonly answer: FrostAnswer; readonly climate: TableClimate | null } {
  try {
    return { answer: ofAir(), climate: null };
  } catch (error) {
    const climate = error instanceof RequestError && error.code === 'no-past-years' ? climateOf() : null;
    if (!climate) throw error;
    return { answer: typicalFrost(climate, thresholdC, latitude), climate };
  }
}

/** The place was deleted meanwhile. */
function notThere(id: string): never {
  throw resourceNotFound('place', id);
}
