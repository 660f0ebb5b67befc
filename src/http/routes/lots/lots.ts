import { addDays, dateAt, fixedZone, type PlainDate } from '../../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact, wasValue } from '../../../basics/field-facts.js';
import { orAsKept } from '../../../contract/kept.js';
import { lotAnswerSchema, lotListSchema, lotPutSchema } from '../../../contract/lots.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
import { lotNow } from '../../../garden/lots/lot-now.js';
import type { LotFields, SeedLot } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { chosenCrop } from '../../../germination/crop-choice.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { forPeople } from '../../negotiation/rounding.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleLot } from '../../question/examples.js';
import {
  asKept,
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
  putAndAnswer,
  type Repository,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteAsAllowed, listRoute } from '../../resource/resource-routes.js';

/** The seed that a grower has. */
export const lotRoutes = (store: Store, clock: () => Date): Route[] => {
  const keeper: Repository<SeedLot, LotFields> = {
    find: store.lot,
    put: store.putLot,
    show: (lot) => asKept(lotAnswer(lot, dateOf(clock()))),
  };
  return [
    listRoute(
      { kind: 'lot', summary: 'Your seed lots, by id', schema: lotListSchema, list: store.lots, onWire: serializeLot },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/lots/:id',
      operation: {
        id: 'putLot',
        summary: 'Keep a seed lot, or replace it',
        description:
          'A counted test, or the percent on the packet. Where the moisture of the seed, the temperature of its store and the date of the test are told, and constants are published for the crop, it is aged; otherwise it is only said when to test it before use.',
        json: { schema: lotPutSchema, example: exampleLot, readOnly: readOnlyOf(lotPutSchema, lotAnswerSchema) },
        answer: { schema: lotAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: ['unknown-crop', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'lot');
        const fields = readPut(lotPutSchema, lotAnswerSchema, request.body);
        chosenCrop(fields.crop);
        refuseToCome(fields, clock());
        return putAndAnswer(request, reply, id, keeper, () => fields, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/lots/:id',
      operation: {
        id: 'getLot',
        summary: 'One seed lot, and what it is worth today',
        query: [asParameter],
        answer: { schema: orAsKept(lotAnswerSchema, lotPutSchema) },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        const isAsKept = isAskedAsKept(request);
        const id = idIn(request, 'lot');
        const lot = await store.lot(ownerOf(request), id);
        if (!lot) throw resourceNotFound('lot', id);
        if (isAsKept) return sendAsKept(request, reply, lot.revision, fieldsOf(lotPutSchema, lot));
        const content = lotAnswer(lot, dateOf(clock()));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    {
      method: 'DELETE',
      url: '/v1/lots/:id',
      operation: {
        id: 'deleteLot',
        summary: 'Delete a seed lot that was not sown',
        answer: 'none',
        ifMatch: true,
        problems: ['not-found', 'has-sowings', 'precondition-failed', ...keptProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'lot');
        const outcome = await deleteAsAllowed(request, id, keeper, (owner, ifRevision) =>
          store.deleteLot(owner, id, ifRevision),
        );
        if (outcome === 'absent') throw resourceNotFound('lot', id);
        if (outcome === 'has-sowings') {
          throw new RequestError('has-sowings', keptRefusal('has-sowings.lot', { lot: id }));
        }
        return reply.code(204).send();
      },
    },
  ];
};

/** A lot has no place, so its day is that of UTC. */
export const dateOf = (now: Date): PlainDate => dateAt(now.getTime(), fixedZone(0));

/** Refuses a test, or a packet, that is yet to come anywhere on earth. @throws {RequestError} `not-understood`. */
export function refuseToCome(
  { testedOn, packedYear }: Pick<LotFields, 'testedOn' | 'packedYear'>,
  now: Date,
  path: readonly string[] = [],
): void {
  const tomorrow = addDays(dateOf(now), 1);
  const nextYear = Number(tomorrow.slice(0, 4)) + 1;
  const faults = [
    ...(testedOn !== null && testedOn > tomorrow
      ? [{ path: [...path, 'testedOn'], detail: fieldFact('field.to-come', wasValue(testedOn)) }]
      : []),
    ...(packedYear !== null && packedYear > nextYear
      ? [
          {
            path: [...path, 'packedYear'],
            detail: fieldFact('field.at-most', { limit: nextYear, of: 'number', ...wasValue(packedYear) }),
          },
        ]
      : []),
  ];
  if (faults.length > 0) throw notUnderstood(faults);
}

const serializeLot = ({ id, revision, ...fields }: SeedLot): SeedLot => ({ id, revision, ...fields });

function lotAnswer(lot: SeedLot, on: PlainDate) {
  const { percent, range, aged, testBeforeUse, assumptions, warnings } = lotNow(lot, on);
  const { whole } = forPeople;
  return {
    ...serializeLot(lot),
    now: {
      on,
      percent: percent === null ? null : whole(percent),
      range: range && { from: whole(range.from), to: whole(range.to) },
      aged: aged.map((one) => ({ ...one, percent: whole(one.percent) })),
      testBeforeUse,
    },
    assumptions,
    warnings,
  };
}
