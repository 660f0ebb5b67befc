import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { addDays, type PlainDate } from '../../../basics/calendar.js';
import { dateSchema, idSchema } from '../../../contract/common.js';
import { type SowingAnswer, type SowingList, sowingListSchema, sowingParts } from '../../../contract/sowings.js';
import { type BedRecords, bedInputsIn, bedRows } from '../../../garden/bed/bed-records.js';
import { onceEach } from '../../../garden/bed/bed-season.js';
import type { WorkPort } from '../../../garden/sowing/work-port.js';
import type { Sowing } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { workPortOf } from '../../../worker/work-port-of.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import type { Unworded } from '../../negotiation/worded.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Operation, Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';
import { listParameters, listQuery, queryOf } from '../../resource/resource.js';
import { cachedSowing } from './cached-sowing.js';
import { serializeSowing } from './sowing-serializer.js';

/** Maximum sowings on a page with states: each is a forecast of its own. */
const MAX_WORKED_OUT = 25;
/** An older sowing is no longer open, whatever is known of its harvest [d]. */
const MAX_OPEN_DAYS = 366;

const query = listQuery.extend({
  bed: idSchema.optional(),
  from: dateSchema.optional(),
  with: z
    .string()
    .transform((text) => [...new Set(text.split(','))].filter((part) => part !== ''))
    .pipe(z.array(z.enum(sowingParts)))
    .default([]),
  open: z
    .enum(['true', 'false'])
    .default('false')
    .transform((text) => text === 'true'),
});

const operation: Operation = {
  id: 'listSowings',
  summary: 'Your sowings, by id, of all beds or one; with their states on request',
  description: `With \`with\` or \`open\` a page has at most ${MAX_WORKED_OUT} sowings. Unchanged sowings are not worked out again.`,
  query: [
    ...listParameters,
    { name: 'bed', schema: idSchema, description: 'Only those of this bed.' },
    { name: 'from', schema: dateSchema, description: 'Only those sown on this date or later.' },
    {
      name: 'with',
      schema: z.string().meta({ examples: ['judgement,triage,toDo,forecast'] }),
      description: `Parts to add to each sowing, separated by commas: ${sowingParts.join(', ')}. \`judgement\` also adds counts, what they taught, harvest, resowBy and warnings.`,
    },
    {
      name: 'open',
      schema: z.boolean().default(false),
      description: `true: only those that are not lost, past their harvest, or older than ${MAX_OPEN_DAYS} days. A page may then hold few or none; continue while \`next\` is not null.`,
    },
  ],
  answer: { schema: sowingListSchema },
  problems: ['busy', ...keptProblems],
};

/** An owner's sowings by id, each with the requested parts of its state. */
export const sowingListRoute = (service: Service): Route => ({
  method: 'GET',
  url: '/v1/sowings',
  operation,
  async handler(request, reply) {
    const { store, clock, work, answers } = service;
    const asked = queryOf(query, request);
    const owner = ownerOf(request);
    const by = request.askedBy();
    const now = clock();
    if (asked.with.length === 0 && !asked.open) {
      const { page, next } = await sownFrom(store, owner, asked);
      const content = { sowings: page.map(serializeSowing), next };
      return sendWithETag(request, reply, content, (): Unworded<SowingList> => signed(content, now));
    }
    const { page, next } = await sownFrom(store, owner, { ...asked, limit: Math.min(asked.limit, MAX_WORKED_OUT) });
    const rows = await rowsOfBeds(store, owner, page, now);
    const there = page.filter(({ bed }) => rows.has(bed));
    const inputs = {
      asked,
      sowings: there.map(({ id, revision }) => [id, revision]),
      beds: [...rows.values()].map(bedInputsIn),
      next,
    };
    return answers.send({ request, reply, owner }, inputs, async () => {
      // Sowings of a bed share the season, so its windows are worked out once.
      const askers = new Map([...rows.keys()].map((bed) => [bed, onceEach(workPortOf(work, by))]));
      const sowings: SowingList['sowings'] = [];
      for (const sowing of there) {
        const bed = rows.get(sowing.bed)!;
        if (asked.open && isOld(sowing, bed)) continue;
        const answer = await answerOf(service, request, sowing, bed, askers.get(sowing.bed)!, now);
        if (answer && !(asked.open && isOver(answer, bed.today))) sowings.push(partOf(answer, asked.with));
      }
      const list: Unworded<SowingList> = signed({ sowings, next }, now);
      return asJson(list, request);
    });
  },
});

/** The answer about a sowing; undefined: it was deleted meanwhile. */
async function answerOf(
  service: Service,
  request: FastifyRequest,
  { id }: Sowing,
  bed: BedRecords,
  ask: WorkPort,
  now: Date,
): Promise<SowingAnswer | undefined> {
  const counted = await service.store.sowing(ownerOf(request), id);
  return counted && cachedSowing(service, request, counted, bed, { ask, now });
}

interface ListAsked {
  readonly bed?: string | undefined;
  readonly from?: PlainDate | undefined;
  readonly after?: string | undefined;
  readonly limit: number;
}

/** A page of the sowings from a date on, and the id to continue after. */
async function sownFrom(
  store: Store,
  owner: string,
  { bed, from, after, limit }: ListAsked,
): Promise<{ page: Sowing[]; next: string | null }> {
  const found: Sowing[] = [];
  for (let last = after; found.length <= limit; ) {
    const some = await store.sowings(owner, { bed, after: last, limit: limit + 1 });
    found.push(...some.filter(({ date }) => from === undefined || date >= from));
    last = some.at(-1)?.id;
    if (some.length <= limit) break;
  }
  const page = found.slice(0, limit);
  return { page, next: found.length > limit ? page.at(-1)!.id : null };
}

async function rowsOfBeds(
  store: Store,
  owner: string,
  sowings: readonly Sowing[],
  now: Date,
): Promise<Map<string, BedRecords>> {
  const rows = new Map<string, BedRecords>();
  for (const bed of new Set(sowings.map((sowing) => sowing.bed))) {
    const found = await bedRows(store, owner, bed, now.getTime());
    if (found) rows.set(bed, found);
  }
  return rows;
}

const isOld = ({ date }: Sowing, { today }: BedRecords): boolean => date < addDays(today, -MAX_OPEN_DAYS);

const isOver = ({ judgement, harvest }: SowingAnswer, today: PlainDate): boolean =>
  judgement?.verdict === 'lost' || (harvest !== null && harvest.to < today);

/** The stored fields of a sowing, and the requested parts. */
function partOf(
  {
    judgement,
    counts,
    learned,
    expected,
    observed,
    indoors,
    harvest,
    resowBy,
    warnings,
    triage,
    toDo,
    forecast,
    assumptions: _assumptions,
    model: _model,
    issuedAt: _issuedAt,
    ...kept
  }: SowingAnswer,
  parts: readonly (typeof sowingParts)[number][],
): SowingList['sowings'][number] {
  return {
    ...kept,
    ...(parts.includes('judgement')
      ? { counts, learned, expected, observed, judgement, indoors, harvest, resowBy, warnings }
      : {}),
    ...(parts.includes('triage') ? { triage } : {}),
    ...(parts.includes('toDo') ? { toDo } : {}),
    ...(parts.includes('forecast') ? { forecast } : {}),
  };
}
