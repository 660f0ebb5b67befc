import { z } from 'zod';
import { addDays, type PlainDate, zoneNamed } from '../../../basics/calendar.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { basisCode } from '../../../basics/series.js';
import { dateSchema } from '../../../contract/common.js';
import {
  changesAnswerSchema,
  dateRangeParameters,
  dateRangeShape,
  deletedAnswerSchema,
  keptPrecisionSchema,
  refuseBackward,
} from '../../../contract/kept.js';
import { airKeptSchema } from '../../../contract/places.js';
import { seriesSchema } from '../../../contract/series.js';
import type { Place, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { bodyProblems, keptProblems, storageProblems } from '../../problems/common-problems.js';
import { exampleAirCsv, examplePastAir } from '../../question/examples.js';
import { kept, seriesFault, type Upload, uploadOf, uploadParameters } from '../../question/upload.js';
import {
  asParameter,
  asQueryShape,
  type Current,
  changeAsAllowed,
  idIn,
  queryOf,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { serializeAirDay } from './air-serializer.js';
import { placeIn } from './places.js';
import { incompleteNotes, wholeDays } from './whole-days.js';

const MAX_DAYS = 40_000;
const DEFAULT_DAYS = 4000;

const airQuery = z
  .strictObject({
    ...dateRangeShape,
    after: dateSchema.optional(),
    limit: z.coerce.number().int().min(1).max(MAX_DAYS).default(DEFAULT_DAYS),
    precision: keptPrecisionSchema,
    ...asQueryShape,
  })
  .superRefine(refuseBackward);
const rangeQuery = z.strictObject(dateRangeShape).superRefine(refuseBackward);

/** The present state of a place's air, whose revision is the place's. */
const airCurrentOf = (place: Place | undefined, range: Partial<z.output<typeof airQuery>>): Current =>
  place
    ? { revision: place.revision, inputs: () => airInputs(place, { ...airQuery.parse({}), ...range }) }
    : { revision: null };

/** Everything that an answer about a place's air depends on; no day need be read to know it unchanged. */
const airInputs = ({ id, revision }: Place, { from, to, after, limit, precision }: z.output<typeof airQuery>) => ({
  air: [id, revision],
  asked: { from, to, after, limit, precision },
});

/** The routes of a place's past air. */
export const placeAirRoutes = (store: Store, clock: () => Date): Route[] => [
  addAir(store, clock),
  getAir(store, clock),
  deleteAir(store, clock),
];

const addAir = (store: Store, clock: () => Date): Route => ({
  method: 'POST',
  url: '/v1/places/:id/air',
  operation: {
    id: 'addAir',
    summary: "Store air temperatures of past days; each replaces its date's earlier values",
    description: 'Days, or readings, of which the complete days are stored. A forecast goes to coming-days instead.',
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
    const { days, incomplete } = wholeDays(request, upload.series);
    const { readings, dayBasis } = upload.series;
    if ((readings?.basis ?? dayBasis).some((basis) => !HAS_BEEN.includes(basis))) {
      const field = readings ? 'readings' : 'daily';
      throw seriesFault(request, field, fieldFact('field.air-not-measured'));
    }
    if (upload.series.origin === 'forecast') throw seriesFault(request, 'origin', fieldFact('field.air-forecast'));
    const owner = ownerOf(request);
    const changes = await changeAsAllowed(
      request,
      async () => airCurrentOf(await store.place(owner, place.id), {}),
      (ifRevision) => store.putAir(owner, place.id, days, ifRevision),
    );
    if (!changes) throw resourceNotFound('place', place.id);
    return kept(withIncomplete(upload, incomplete), changes, clock());
  },
});

const getAir = (store: Store, clock: () => Date): Route => ({
  method: 'GET',
  url: '/v1/places/:id/air',
  operation: {
    id: 'getAir',
    summary: "The days of a place's air, as a series that can be sent back",
    query: [
      ...dateRangeParameters,
      { name: 'after', schema: dateSchema, description: 'Return only dates after this one.' },
      { name: 'limit', schema: z.int().min(1).max(MAX_DAYS).default(DEFAULT_DAYS) },
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
        series: { medium: 'air', unit: 'C', daily: page.map((day) => serializeAirDay(day, precision)) },
        next: days.length > limit ? page.at(-1)!.date : null,
      };
    };
    if (asked.as === 'kept') return sendAsKept(request, reply, place.revision, (await answer()).series);
    return sendWithETag(request, reply, airInputs(place, asked), async () => signed(await answer(), clock()));
  },
});

const deleteAir = (store: Store, clock: () => Date): Route => ({
  method: 'DELETE',
  url: '/v1/places/:id/air',
  operation: {
    id: 'deleteAir',
    summary: 'Delete days of air, all or those between dates',
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
    if (deleted === undefined) throw resourceNotFound('place', id);
    return signed({ deleted }, clock());
  },
});

const HAS_BEEN = (['measured', 'corrected', 'modelled', 'filled'] as const).map(basisCode);
const withIncomplete = ({ series, understood }: Upload, count: number): Upload => ({
  understood,
  series: { ...series, warnings: [...series.warnings, ...incompleteNotes(count)] },
});

const laterOf = (from: PlainDate | undefined, after: PlainDate | undefined): PlainDate | undefined => {
  const next = after && addDays(after, 1);
  return from === undefined || (next !== undefined && next > from) ? next : from;
};
