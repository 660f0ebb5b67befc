import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { addDays, dateAt, findStamp, instantText, startOfDay, type Zone, zoneNamed } from '../../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { bases } from '../../../basics/series.js';
import { readingsKeptSchema, thermometersAnswerSchema } from '../../../contract/beds.js';
import { mustBe } from '../../../contract/field-issue.js';
import {
  changesAnswerSchema,
  dateRangeParameters,
  dateRangeShape,
  deletedAnswerSchema,
  keptPrecisionSchema,
  refuseBackward,
} from '../../../contract/kept.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
import { seriesSchema } from '../../../contract/series.js';
import type { Bed, DateRange, InstantRange, Probe, Store } from '../../../garden/store/store.js';
import type { Readings } from '../../../readings/readings.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { roundingFor } from '../../negotiation/rounding.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { bodyProblems, keptProblems, storageProblems } from '../../problems/common-problems.js';
import { exampleBedReadings, exampleCsv } from '../../question/examples.js';
import { kept, seriesFault, uploadOf, uploadParameters } from '../../question/upload.js';
import {
  asParameter,
  asQueryShape,
  type Current,
  changeAsAllowed,
  queryOf,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { bedIn } from '../beds/beds.js';

const MAX_READINGS = 50_000;
const DEFAULT_READINGS = 10_000;

const mediumSchema = z.enum(['soil', 'air']);
const AT_SEED = 'seed';
const depthSchema = z.union([z.literal(AT_SEED), z.number().min(0).max(100)]);
const STAMP_FAULT = mustBe('field.instant');

const probeShape = {
  medium: mediumSchema.optional(),
  probeDepthCm: z.union([z.literal(AT_SEED), z.coerce.number().min(0).max(100)]).optional(),
};
const readingsQuery = z
  .strictObject({
    ...dateRangeShape,
    ...probeShape,
    after: z
      .string()
      .max(40)
      .refine((text) => findStamp(text) !== undefined, STAMP_FAULT)
      .transform((text) => findStamp(text)!.ms)
      .optional(),
    limit: z.coerce.number().int().min(1).max(MAX_READINGS).default(DEFAULT_READINGS),
    precision: keptPrecisionSchema,
    ...asQueryShape,
  })
  .superRefine(refuseBackward);
type ReadingsAsked = Omit<z.output<typeof readingsQuery>, 'as'>;
const deleteQuery = z.strictObject({ ...dateRangeShape, ...probeShape }).superRefine(refuseBackward);

/** All that an answer about a bed's readings rests on: none need be read to know it unchanged. */
const readingsInputs = ({ id, revision }: Bed, asked: ReadingsAsked) => {
  const { from, to, medium, probeDepthCm, after, limit, precision } = asked;
  return { readings: [id, revision], asked: { from, to, medium, probeDepthCm, after, limit, precision } };
};

const currentOf = (bed: Bed | undefined, asked: Partial<ReadingsAsked>): Current =>
  bed
    ? { revision: bed.revision, inputs: () => readingsInputs(bed, { ...readingsQuery.parse({}), ...asked }) }
    : { revision: null };

const probeParameters = [
  { name: 'medium', schema: mediumSchema, description: 'Only thermometers in it.' },
  {
    name: 'probeDepthCm',
    schema: depthSchema,
    description: 'Only the thermometer at this depth [cm]; `seed`: the one at the seed.',
  },
];

/** What the thermometers of a bed have read. */
export const bedReadingsRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'POST',
    url: '/v1/beds/:id/readings',
    operation: {
      id: 'addReadings',
      summary: 'Keep readings of a thermometer in or above a bed',
      description:
        'Each is kept in place of an earlier one of the same medium, depth and instant. Readings have instants: days of air go to the place, days of soil with each question.',
      query: uploadParameters,
      json: { schema: seriesSchema, example: exampleBedReadings },
      csv: { example: exampleCsv },
      answer: { schema: changesAnswerSchema },
      ifMatch: true,
      problems: ['not-found', 'precondition-failed', 'quota-full', ...bodyProblems, ...storageProblems],
    },
    async handler(request) {
      const bed = await bedIn(request, store);
      const zone = await zoneOf(bed, request, store);
      const upload = await uploadOf(request, zone);
      const { readings, medium, probeDepthCm, origin } = upload.series;
      if (!readings) throw seriesFault(request, 'daily', fieldFact('field.came-by-the-day'));
      if (origin === 'forecast') {
        throw seriesFault(request, 'origin', fieldFact('field.bed-forecast'));
      }
      const owner = ownerOf(request);
      const probe = { medium, probeDepthCm };
      const changes = await changeAsAllowed(
        request,
        async () => currentOf(await store.bed(owner, bed.id), {}),
        (ifRevision) => store.putReadings(owner, bed.id, probe, readings, ifRevision),
      );
      if (!changes) throw resourceNotFound('bed', bed.id);
      return kept(upload, changes, clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/thermometers',
    operation: {
      id: 'listThermometers',
      summary: 'What is kept of each thermometer of a bed: how many readings, from when to when',
      answer: { schema: thermometersAnswerSchema },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      refuseQuery(request);
      const bed = await bedIn(request, store);
      const kept = await store.series(ownerOf(request), bed.id);
      const thermometers = kept.map(({ probeDepthCm, ...one }) => ({
        ...one,
        ...(probeDepthCm === null ? {} : { probeDepthCm }),
      }));
      return sendWithETag(request, reply, { thermometers }, () => signed({ thermometers }, clock()));
    },
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/readings',
    operation: {
      id: 'getReadings',
      summary: 'The readings of a bed, one series of each thermometer, that can be sent back',
      query: [
        ...dateRangeParameters,
        ...probeParameters,
        {
          name: 'after',
          schema: z
            .string()
            .max(40)
            .meta({ examples: ['2027-05-03T12:00:00-02:00'] }),
          description: 'The instant after which to go on.',
        },
        {
          name: 'limit',
          schema: z.int().min(1).max(MAX_READINGS).default(DEFAULT_READINGS),
          description: 'How many readings of one thermometer, about: whole days are given.',
        },
        { name: 'precision', schema: keptPrecisionSchema },
        { ...asParameter, description: '`kept`: the series alone, of one thermometer, as it can be sent back.' },
      ],
      answer: { schema: readingsKeptSchema },
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      const { as, ...asked } = queryOf(readingsQuery, request);
      const { after, limit, precision, from, to, ...wanted } = asked;
      const bed = await bedIn(request, store);
      const answer = async () => {
        const zone = await zoneOf(bed, request, store);
        const probes = (await store.series(ownerOf(request), bed.id)).filter((one) => isWanted(one, wanted));
        if (as === 'kept') refuseSeveral(probes);
        const range = instantsOf({ from, to }, zone);
        if (after !== undefined) range.fromMs = Math.max(range.fromMs ?? -Infinity, Math.floor(after) + 1);
        const end = await endOfPage({ store, request, bed, zone, probes, range, limit });
        const series = [];
        for (const probe of probes) {
          const readings = await store.readings(ownerOf(request), bed.id, probe, { ...range, toMs: end.toMs });
          if (readings.atMs.length > 0) series.push(serializeReadings(probe, readings, zone, precision));
        }
        return { revision: bed.revision, series, next: end.isLast ? null : instantText(end.toMs! - 1, zone) };
      };
      if (as === 'kept') {
        const [series] = (await answer()).series;
        if (!series) throw new RequestError('not-found', keptRefusal('not-found.readings', { bed: bed.id }));
        return sendAsKept(request, reply, bed.revision, series);
      }
      return sendWithETag(request, reply, readingsInputs(bed, asked), async () => signed(await answer(), clock()));
    },
  },
  {
    method: 'DELETE',
    url: '/v1/beds/:id/readings',
    operation: {
      id: 'deleteReadings',
      summary: 'Forget readings: those from and to dates, of one thermometer, or all',
      query: [...dateRangeParameters, ...probeParameters],
      answer: { schema: deletedAnswerSchema },
      ifMatch: true,
      problems: ['not-found', 'precondition-failed', ...keptProblems],
    },
    async handler(request) {
      const { from, to, ...wanted } = queryOf(deleteQuery, request);
      const bed = await bedIn(request, store);
      const range = instantsOf({ from, to }, await zoneOf(bed, request, store));
      const owner = ownerOf(request);
      const probes = (await store.series(owner, bed.id)).filter((probe) => isWanted(probe, wanted));
      const deleted = await changeAsAllowed(
        request,
        async () => currentOf(await store.bed(owner, bed.id), { from, to, ...wanted }),
        (ifRevision) => store.deleteReadings(owner, bed.id, range, probes, ifRevision),
      );
      if (deleted === undefined) throw resourceNotFound('bed', bed.id);
      return signed({ deleted }, clock());
    },
  },
];

interface WantedProbe {
  readonly medium?: Probe['medium'] | undefined;
  readonly probeDepthCm?: number | typeof AT_SEED | undefined;
}

const isWanted = (probe: Probe, { medium, probeDepthCm }: WantedProbe): boolean =>
  (medium === undefined || probe.medium === medium) &&
  (probeDepthCm === undefined || probe.probeDepthCm === (probeDepthCm === AT_SEED ? null : probeDepthCm));

/** What is sent back is of one thermometer. @throws {RequestError} `not-understood`, with those there are. */
function refuseSeveral(probes: readonly Probe[]): void {
  if (probes.length < 2) return;
  const all = probes.map(({ medium, probeDepthCm }) => `medium=${medium}&probeDepthCm=${probeDepthCm ?? AT_SEED}`);
  throw notUnderstood([{ parameter: 'as', detail: fieldFact('field.one-thermometer', { ways: all.join(', ') }) }]);
}

/** The zone of a bed's place. */
async function zoneOf(bed: Bed, request: FastifyRequest, store: Store): Promise<Zone> {
  const place = await store.place(ownerOf(request), bed.place);
  if (!place) throw resourceNotFound('bed', bed.id);
  return zoneNamed(place.timeZone);
}

const instantsOf = (
  { from, to }: DateRange,
  zone: Zone,
): { -readonly [Key in keyof InstantRange]: InstantRange[Key] } => ({
  ...(from === undefined ? {} : { fromMs: startOfDay(from, zone) }),
  ...(to === undefined ? {} : { toMs: startOfDay(addDays(to, 1), zone) }),
});

interface Paged {
  readonly store: Store;
  readonly request: FastifyRequest;
  readonly bed: Bed;
  readonly zone: Zone;
  readonly probes: readonly Probe[];
  readonly range: InstantRange;
  readonly limit: number;
}

/** Where a page ends: with the day on which some thermometer has its `limit` readings, before any other has. */
async function endOfPage({ store, request, bed, zone, probes, range, limit }: Paged) {
  const { fromMs, toMs } = range;
  const dates: DateRange = {
    from: fromMs === undefined ? undefined : dateAt(fromMs, zone),
    to: toMs === undefined ? undefined : dateAt(toMs - 1, zone),
  };
  let endMs = toMs;
  let isLast = true;
  for (const probe of probes) {
    const days = await store.readingDays(ownerOf(request), bed.id, probe, dates);
    let full = 0;
    for (let count = 0; full < days.length && count < limit; full++) count += days[full]!.readings;
    if (full === days.length) continue;
    const midnight = startOfDay(addDays(days[full - 1]!.date, 1), zone);
    if (endMs === undefined || midnight < endMs) endMs = midnight;
    isLast = false;
  }
  return { toMs: endMs, isLast };
}

function serializeReadings(
  { medium, probeDepthCm }: Probe,
  readings: Readings,
  zone: Zone,
  precision: 'full' | 'rounded',
) {
  const { temperature } = roundingFor(precision);
  const rows = Array.from(readings.atMs, (atMs, i) => {
    const basis = bases[readings.basis[i]!]!;
    return {
      at: instantText(atMs, zone),
      value: temperature(readings.valueC[i]!),
      ...(basis === 'measured' ? {} : { basis }),
    };
  });
  return { medium, ...(probeDepthCm === null ? {} : { probeDepthCm }), unit: 'C', readings: rows };
}
