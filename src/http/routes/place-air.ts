import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { frostDatesOfPlace } from '../../answers/frost-dates.js';
import { addDays, type PlainDate, zoneNamed } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import type { AirDay, Place, Store } from '../../garden/store.js';
import { type ReadSeries, readSeries } from '../../readings/read-series.js';
import { sendWithETag, tagOf } from '../etag.js';
import { exampleAirCsv, exampleComingDays, exampleNormals, examplePastAir } from '../examples.js';
import {
  asParameter,
  asQueryShape,
  type Current,
  changeAsAllowed,
  idIn,
  isAskedAsKept,
  notKept,
  queryOf,
  readOnlyOf,
  readPut,
  refuseQuery,
  sendAsKept,
} from '../kept.js';
import { signed } from '../model.js';
import { ownerOf } from '../owner.js';
import { read } from '../read.js';
import { roundingFor } from '../rounding.js';
import type { Route } from '../route.js';
import { dateSchema } from '../schemas/common.js';
import {
  changesAnswerSchema,
  dateRangeParameters,
  dateRangeShape,
  deletedAnswerSchema,
  keptPrecisionSchema,
  orAsKept,
  refuseBackward,
} from '../schemas/kept.js';
import {
  airKeptSchema,
  comingDaysAnswerSchema,
  comingDaysKeptSchema,
  frostAnswerSchema,
  normalsAnswerSchema,
  normalsSchema,
} from '../schemas/places.js';
import { seriesSchema } from '../schemas/series.js';
import { kept, seriesFault, type Upload, uploadOf, uploadParameters } from '../upload.js';
import { bodyProblems, changeProblems, keptProblems, storageProblems } from '../usual-problems.js';
import { placeIn } from './places.js';

const MOST_DAYS = 40_000;
const USUAL_DAYS = 4000;

const airQuery = z
  .strictObject({
    ...dateRangeShape,
    after: dateSchema.optional(),
    limit: z.coerce.number().int().min(1).max(MOST_DAYS).default(USUAL_DAYS),
    precision: keptPrecisionSchema,
    ...asQueryShape,
  })
  .superRefine(refuseBackward);
const rangeQuery = z.strictObject(dateRangeShape).superRefine(refuseBackward);
const comingQuery = z.strictObject({ precision: keptPrecisionSchema, ...asQueryShape });

/** Of what is kept with a place its revision is that of all of it. */
const airCurrentOf = (place: Place | undefined, range: Partial<z.output<typeof airQuery>>): Current =>
  place
    ? { revision: place.revision, inputs: () => airInputs(place, { ...airQuery.parse({}), ...range }) }
    : { revision: null };

/** All that an answer about a place's air rests on: no day need be read to know it unchanged. */
const airInputs = ({ id, revision }: Place, { from, to, after, limit, precision }: z.output<typeof airQuery>) => ({
  air: [id, revision],
  asked: { from, to, after, limit, precision },
});

const thresholdSchema = z.coerce.number().min(-20).max(20).default(0);
const frostQuery = z.strictObject({ threshold: thresholdSchema });

/** What the air of a place has been, is in an ordinary year, and will be. */
export const placeAirRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'POST',
    url: '/v1/places/:id/air',
    operation: {
      id: 'addAir',
      summary: 'Keep air temperatures of past days, each in place of what was kept of its date',
      description:
        'By the day, or as readings, of which the complete days are kept. A forecast goes to coming-days instead.',
      query: uploadParameters,
      json: { schema: seriesSchema, example: examplePastAir },
      csv: { example: exampleAirCsv },
      answer: { schema: changesAnswerSchema },
      ifMatch: true,
      problems: ['not-found', 'precondition-failed', 'quota-full', ...bodyProblems, ...storageProblems],
    },
    async handler(request) {
      const place = await placeIn(request, store);
      const upload = await uploadOf(request, zoneNamed(place.timeZone), 'air');
      const { days, incomplete } = airOf(request, upload.series);
      const { readings, dayBasis } = upload.series;
      if ((readings?.basis ?? dayBasis).some((basis) => !HAS_BEEN.includes(basis))) {
        const field = readings ? 'readings' : 'daily';
        throw seriesFault(request, field, `must not hold what was not measured, by its basis; ${TO_COMING_DAYS}`);
      }
      if (upload.series.origin === 'forecast') throw seriesFault(request, 'origin', `is forecast; ${TO_COMING_DAYS}`);
      const owner = ownerOf(request);
      const changes = await changeAsAllowed(
        request,
        async () => airCurrentOf(await store.place(owner, place.id), {}),
        (ifRevision) => store.putAir(owner, place.id, days, ifRevision),
      );
      if (!changes) throw notKept('place', place.id);
      return kept(withIncomplete(upload, incomplete), changes, clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/places/:id/air',
    operation: {
      id: 'getAir',
      summary: "The days of a place's air, as a series that can be sent back",
      query: [
        ...dateRangeParameters,
        { name: 'after', schema: dateSchema, description: 'The date after which to go on.' },
        { name: 'limit', schema: z.int().min(1).max(MOST_DAYS).default(USUAL_DAYS) },
        { name: 'precision', schema: keptPrecisionSchema },
        asParameter,
      ],
      answer: { schema: airKeptSchema },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      const asked = queryOf(airQuery, request);
      const { from, to, after, limit, precision } = asked;
      const place = await placeIn(request, store);
      const answer = async () => {
        const days = await store.air(ownerOf(request), place.id, { from: laterOf(from, after), to });
        const page = days.slice(0, limit);
        return {
          revision: place.revision,
          series: { medium: 'air', unit: 'C', daily: page.map((day) => dayOnWire(day, precision)) },
          next: days.length > limit ? page.at(-1)!.date : null,
        };
      };
      if (asked.as === 'kept') return sendAsKept(request, reply, place.revision, (await answer()).series);
      return sendWithETag(request, reply, airInputs(place, asked), async () => signed(await answer(), clock()));
    },
  },
  {
    method: 'DELETE',
    url: '/v1/places/:id/air',
    operation: {
      id: 'deleteAir',
      summary: 'Forget days of air: those from and to dates, or all',
      query: dateRangeParameters,
      answer: { schema: deletedAnswerSchema },
      ifMatch: true,
      problems: ['not-found', 'precondition-failed', ...keptProblems],
    },
    async handler(request) {
      const range = queryOf(rangeQuery, request);
      const id = idIn(request, 'place');
      const owner = ownerOf(request);
      const deleted = await changeAsAllowed(
        request,
        async () => airCurrentOf(await store.place(owner, id), range),
        (ifRevision) => store.deleteAir(owner, id, range, ifRevision),
      );
      if (deleted === undefined) throw notKept('place', id);
      return signed({ deleted }, clock());
    },
  },
  {
    method: 'PUT',
    url: '/v1/places/:id/normals',
    operation: {
      id: 'putNormals',
      summary: 'Keep the long-term monthly means of the daily maximum and minimum',
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
      if (!done) throw notKept('place', id);
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
  {
    method: 'PUT',
    url: '/v1/places/:id/coming-days',
    operation: {
      id: 'putComingDays',
      summary: "Keep a forecast of the place's air in place of the one before",
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
        throw seriesFault(request, 'origin', 'must be forecast; what was measured goes to POST /v1/places/{id}/air');
      }
      const { days, incomplete } = airOf(request, readSeries({ ...body, origin: 'forecast' }, zoneNamed(timeZone), []));
      const coming = { atMs: clock().getTime(), days };
      let isNew = (await store.comingDays(owner, id)) === undefined;
      const done = await changeAsAllowed(
        request,
        async () => {
          const place = await store.place(owner, id);
          const before = await store.comingDays(owner, id);
          isNew = before === undefined;
          return { revision: place?.revision ?? null, inputs: before && (() => comingOnWire(before, 'full')) };
        },
        (ifRevision) => store.putComingDays(owner, id, coming, ifRevision),
      );
      if (!done) throw notKept('place', id);
      const content = comingOnWire(coming, 'full');
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
      summary: "The forecast of the place's air that is kept",
      query: [{ name: 'precision', schema: keptPrecisionSchema }, asParameter],
      answer: { schema: comingDaysKeptSchema },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      const { precision, as } = queryOf(comingQuery, request);
      const { id, revision } = await placeIn(request, store);
      const coming = await store.comingDays(ownerOf(request), id);
      if (!coming) throw nothingYet(id, 'coming-days');
      const content = comingOnWire(coming, precision);
      if (as === 'kept') return sendAsKept(request, reply, revision, content.series);
      return sendWithETag(request, reply, content, () => signed({ revision, ...content }, clock()));
    },
  },
  {
    method: 'GET',
    url: '/v1/places/:id/frost-dates',
    operation: {
      id: 'frostDates',
      summary: 'When the last frost of spring and the first of autumn come, at three risks',
      query: [
        {
          name: 'threshold',
          schema: thresholdSchema,
          description: 'A day whose minimum is this or below has a frost [°C].',
        },
      ],
      answer: { schema: frostAnswerSchema },
      problems: ['not-found', 'no-past-years', ...keptProblems],
    },
    async handler(request, reply) {
      const { threshold } = queryOf(frostQuery, request);
      const { id, latitude } = await placeIn(request, store);
      const { assumptions, ...content } = frostDatesOfPlace(await store.air(ownerOf(request), id), threshold, latitude);
      return sendWithETag(request, reply, content, () =>
        signed({ ...content, assumptions: [...assumptions] }, clock()),
      );
    },
  },
];

const HAS_BEEN = (['measured', 'corrected', 'modelled', 'filled'] as const).map(basisCode);
const TO_COMING_DAYS = 'what is to come goes to PUT /v1/places/{id}/coming-days';

/** The whole days of a series of air. */
function airOf(request: FastifyRequest, { medium, days }: ReadSeries): { days: AirDay[]; incomplete: number } {
  if (medium !== 'air') {
    throw seriesFault(request, 'medium', 'must be air; readings of soil go to POST /v1/beds/{id}/readings');
  }
  const whole = days.filter(({ complete }) => complete);
  if (whole.length === 0) {
    throw new RequestError(
      'too-few-readings',
      'No day of the series is complete, and air is kept by whole days. Send at least 18 of its 24 hours.',
    );
  }
  const air = whole.map(({ date, min, mean, max }) => ({ date, min, mean, max }));
  return { days: air, incomplete: days.length - whole.length };
}

const incompleteNotes = (count: number) =>
  count === 0
    ? []
    : [
        {
          code: 'incomplete-days',
          text: `${count === 1 ? 'One day is' : `${count} days are`} left out, with less than 18 hours of readings. Send them again when they are whole.`,
        },
      ];

const withIncomplete = ({ series, understood }: Upload, count: number): Upload => ({
  understood,
  series: { ...series, warnings: [...series.warnings, ...incompleteNotes(count)] },
});

function dayOnWire({ date, min, mean, max }: AirDay, precision: 'full' | 'rounded') {
  const { temperature } = roundingFor(precision);
  return {
    date,
    ...(min === null ? {} : { min: temperature(min) }),
    ...(mean === null ? {} : { mean: temperature(mean) }),
    ...(max === null ? {} : { max: temperature(max) }),
  };
}

const comingOnWire = ({ atMs, days }: { atMs: number; days: readonly AirDay[] }, precision: 'full' | 'rounded') => ({
  at: new Date(atMs).toISOString(),
  series: { medium: 'air', unit: 'C', origin: 'forecast', daily: days.map((day) => dayOnWire(day, precision)) },
});

const laterOf = (from: PlainDate | undefined, after: PlainDate | undefined): PlainDate | undefined => {
  const next = after && addDays(after, 1);
  return from === undefined || (next !== undefined && next > from) ? next : from;
};

const nothingYet = (id: string, what: string): RequestError =>
  new RequestError('not-found', `No ${what} are kept for "${id}"; PUT /v1/places/{id}/${what} keeps some.`);
