import { addDays, dateAt, fixedZone, type PlainDate } from '../../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact, wasValue } from '../../../basics/field-facts.js';
import { lotAnswerSchema, lotListSchema, lotPutSchema } from '../../../contract/lots.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { lotNow } from '../../../garden/lots/lot-now.js';
import type { LotFields, SeedLot } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { chosenCrop } from '../../../germination/crop-choice.js';
import { forPeople } from '../../negotiation/rounding.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { exampleLot } from '../../question/examples.js';
import { putRoute, type Replacement } from '../../resource/change-routes.js';
import { asKept, idIn, type Repository, refuseQuery, resourceNotFound } from '../../resource/resource.js';
import { deleteAsAllowed, getRoute, listRoute } from '../../resource/resource-routes.js';

/** The routes of seed lots. */
export const lotRoutes = (store: Store, clock: () => Date): Route[] => {
  const schemas = { kind: 'lot', put: lotPutSchema, answer: lotAnswerSchema } as const;
  const onWire = serializeLot;
  const lots: Repository<SeedLot, LotFields> = {
    find: store.lot,
    put: store.putLot,
    show: (lot) => asKept(lotAnswer(lot, dateOf(clock()))),
  };
  const list = { kind: 'lot', summary: 'Your seed lots, by id', schema: lotListSchema, list: store.lots } as const;
  const put: Replacement<typeof lotPutSchema> = {
    ...schemas,
    summary: 'Store or replace a seed lot',
    description:
      "A counted test, or the percent on the packet. It is aged if the seed's moisture, the temperature of its store and the date of the test are given, and constants are published for the crop; otherwise the answer only says when to test before use.",
    example: exampleLot,
    problems: ['unknown-crop'],
    refuse(fields) {
      chosenCrop(fields.crop);
      refuseToCome(fields, clock());
    },
  };
  return [
    listRoute({ ...list, onWire }, clock),
    putRoute(put, lots, clock),
    getRoute({ ...schemas, summary: 'One seed lot, and its value today', onWire }, lots, clock),
    deleteLot(lots, store),
  ];
};

const deleteLot = (lots: Repository<SeedLot, LotFields>, store: Store): Route => ({
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
    const outcome = await deleteAsAllowed(request, id, lots, (owner, ifRevision) =>
      store.deleteLot(owner, id, ifRevision),
    );
    if (outcome === 'absent') throw resourceNotFound('lot', id);
    if (outcome === 'has-sowings') throw new RequestError('has-sowings', keptRefusal('has-sowings.lot', { lot: id }));
    return reply.code(204).send();
  },
});

/** A lot has no place, so its day is that of UTC. */
export const dateOf = (now: Date): PlainDate => dateAt(now.getTime(), fixedZone(0));

/** Refuses a test or a packet that is in the future everywhere on earth. @throws {RequestError} `not-understood`. */
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
