import { z } from 'zod';
import { zoneNamed } from '../../../basics/calendar.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { keptPrecisionSchema } from '../../../contract/kept.js';
import { comingDaysAnswerSchema, comingDaysKeptSchema } from '../../../contract/places.js';
import { seriesSchema } from '../../../contract/series.js';
import type { AirDay, Store } from '../../../garden/store/store.js';
import { readSeries } from '../../../readings/read-series.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag, tagOf } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleComingDays } from '../../question/examples.js';
import { read } from '../../question/read.js';
import { seriesFault } from '../../question/upload.js';
import {
  asParameter,
  asQueryShape,
  changeAsAllowed,
  queryOf,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { serializeAirDay } from './air-serializer.js';
import { nothingYet, placeIn } from './places.js';
import { incompleteNotes, wholeDays } from './whole-days.js';

const comingQuery = z.strictObject({ precision: keptPrecisionSchema, ...asQueryShape });

/** The routes of a place's forecast days. */
export const placeComingDaysRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'PUT',
    url: '/v1/places/:id/coming-days',
    operation: {
      id: 'putComingDays',
      summary: "Store a forecast of the place's air; it replaces the one before",
      json: { schema: seriesSchema, example: exampleComingDays },
      answer: { schema: comingDaysAnswerSchema, mayCreate: true },
      ifMatch: true,
      ifNoneMatch: true,
      problems: ['not-found', 'time-zone-needed', 'choose-unit', 'too-few-readings', ...changeProblems],
    },
    async handler(request, reply) {
      refuseQuery(request);
      const { id, timeZone } = await placeIn(request, store);
      const owner = ownerOf(request);
      const body = read(seriesSchema, request.body);
      if (body.origin === 'measured') {
        throw seriesFault(request, 'origin', fieldFact('field.not-forecast'));
      }
      const { days, incomplete } = wholeDays(
        request,
        readSeries({ ...body, origin: 'forecast' }, zoneNamed(timeZone), []),
      );
      const coming = { atMs: clock().getTime(), days };
      let isNew = (await store.comingDays(owner, id)) === undefined;
      const done = await changeAsAllowed(
        request,
        async () => {
          const place = await store.place(owner, id);
          const before = await store.comingDays(owner, id);
          isNew = before === undefined;
          return { revision: place?.revision ?? null, inputs: before && (() => serializeComingDays(before, 'full')) };
        },
        (ifRevision) => store.putComingDays(owner, id, coming, ifRevision),
      );
      if (!done) throw resourceNotFound('place', id);
      const content = serializeComingDays(coming, 'full');
      return reply
        .code(isNew ? 201 : 200)
        .header('etag', tagOf(content))
        .send(signed({ ...done, ...content, warnings: incompleteNotes(incomplete) }, clock()));
    },
  },
  {
    method: 'GET',
    url: '/v1/places/:id/coming-days',
    operation: {
      id: 'getComingDays',
      summary: "The stored forecast of the place's air",
      query: [{ name: 'precision', schema: keptPrecisionSchema }, asParameter],
      answer: { schema: comingDaysKeptSchema },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      const { precision, as } = queryOf(comingQuery, request);
      const { id, revision } = await placeIn(request, store);
      const coming = await store.comingDays(ownerOf(request), id);
      if (!coming) throw nothingYet(id, 'coming-days');
      const content = serializeComingDays(coming, precision);
      if (as === 'kept') return sendAsKept(request, reply, revision, content.series);
      return sendWithETag(request, reply, content, () => signed({ revision, ...content }, clock()));
    },
  },
];

const serializeComingDays = (
  { atMs, days }: { atMs: number; days: readonly AirDay[] },
  precision: 'full' | 'rounded',
) => ({
  at: new Date(atMs).toISOString(),
  series: { medium: 'air', unit: 'C', origin: 'forecast', daily: days.map((day) => serializeAirDay(day, precision)) },
});
