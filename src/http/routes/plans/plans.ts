import { orAsKept } from '../../../contract/kept.js';
import { planAnswerSchema, planListSchema, planPutSchema } from '../../../contract/plans.js';
import {
  type BedInputs,
  bedInputsIn,
  bedInputsOf,
  bedRows,
  keptOf,
  type PlaceRecords,
} from '../../../garden/bed/bed-inputs.js';
import type { GardenPlan } from '../../../garden/plan/plan.js';
import { planQuestionOf } from '../../../garden/plan/plan-question.js';
import type { Plan, PlanFields } from '../../../garden/store/season-store.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import { ownerOf } from '../../auth/owner.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';
import { examplePlan } from '../../question/examples.js';
import {
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
  noSuch,
  putAndAnswer,
  type Repository,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  type ShownResource,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteRoute, listRoute } from '../../resource/resource-routes.js';
import { serializePlan, serializePlanFields } from './plan-serializer.js';

/** Of a bed's sowings the last so many are looked at. */
const MAX_SOWINGS = 100;

/** The harvests that a grower wants, and what to sow for them. */
export const planRoutes = ({ store, clock, work, answers }: Service): Route[] => {
  const bedOf = (owner: string, { bed }: PlanFields): Promise<BedInputs | undefined> =>
    bedInputsOf(store, owner, bed, clock().getTime());
  const ask = async (by: AskedBy, plan: PlanFields, kept: BedInputs): Promise<GardenPlan> => {
    const sowings = await store.sowingsOf(by.owner, plan.bed, MAX_SOWINGS);
    const known = sowings.map(({ sowing }) => sowing);
    return work.ask('plan', planQuestionOf(plan, kept, kept.today, known), by);
  };
  const show = async (plan: Plan, by: AskedBy, planned?: GardenPlan): Promise<ShownResource> => {
    const { owner } = by;
    const rows = await bedRows(store, owner, plan.bed, clock().getTime());
    // Its bed went while we looked.
    if (!rows) throw resourceNotFound('plan', plan.id);
    return {
      inputs: inputsOf(plan, rows),
      async answer() {
        if (planned) return serializePlan(plan, planned);
        by.takePlace?.();
        return serializePlan(plan, await ask(by, plan, await keptOf(store, owner, rows)));
      },
    };
  };
  const keeperFor = (by: AskedBy, planned?: GardenPlan): Repository<Plan, PlanFields> => ({
    find: store.plan,
    async put(owner, id, fields, ifRevision) {
      const done = await store.putPlan(owner, id, fields, ifRevision);
      if (done.outcome === 'no-bed') throw noSuch('bed', fields.bed);
      return done;
    },
    show: (plan) => show(plan, by, planned),
    ...(planned && { showInPart: (plan: Plan) => serializePlan(plan, planned) }),
  });
  return [
    listRoute(
      {
        kind: 'plan',
        summary: 'Your plans, by id, without their sowings; of one bed, if you name it',
        schema: planListSchema,
        list: store.plans,
        onWire: serializePlanFields,
        byBed: true,
      },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/plans/:id',
      operation: {
        id: 'putPlan',
        summary: 'Keep a harvest that is wanted, or replace it, and see what to sow for it',
        description:
          'The sowings are worked out anew whenever the plan is asked for, from the past years of the bed’s place. Three years or more of daily air temperatures are needed, kept with the place, or its normals; what cannot be planned is not kept. A week counts plants that are ready: tomatoes and beans bear for weeks, so want fewer of them.',
        json: { schema: planPutSchema, example: examplePlan, readOnly: readOnlyOf(planPutSchema, planAnswerSchema) },
        answer: { schema: planAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: ['unknown-bed', 'unknown-crop', ...planProblems, ...changeProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'plan');
        const fields = readPut(planPutSchema, planAnswerSchema, request.body);
        const owner = ownerOf(request);
        const by = request.askedBy();
        by.takePlace?.();
        const kept = await bedOf(owner, fields);
        if (!kept) throw noSuch('bed', fields.bed);
        // What cannot be planned is not kept.
        const planned = await ask(by, fields, kept);
        return putAndAnswer(request, reply, id, keeperFor(by, planned), () => fields, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/plans/:id',
      operation: {
        id: 'getPlan',
        summary: 'One plan: what to sow when, and the gaps that heat or frost will leave',
        query: [asParameter],
        answer: { schema: orAsKept(planAnswerSchema, planPutSchema) },
        problems: ['not-found', ...planProblems, ...keptProblems],
      },
      async handler(request, reply) {
        const isAsKept = isAskedAsKept(request);
        const id = idIn(request, 'plan');
        const owner = ownerOf(request);
        const plan = await store.plan(owner, id);
        if (!plan) throw resourceNotFound('plan', id);
        if (isAsKept) return sendAsKept(request, reply, plan.revision, fieldsOf(planPutSchema, plan));
        const { inputs, answer } = await show(plan, request.askedBy());
        return answers.send({ request, reply, owner }, inputs, async () =>
          asJson(signed(await answer(), clock()), request),
        );
      },
    },
    deleteRoute('plan', 'Delete a plan', ({ askedBy }) => keeperFor(askedBy()), store.deletePlan),
  ];
};

/** What can be wrong with what a plan is made from. */
const planProblems = ['no-past-years', 'busy'] as const;

/** All that a plan depends on. */
const inputsOf = (plan: Plan, rows: PlaceRecords): object => ({
  plan: [plan.id, plan.revision],
  ...bedInputsIn(rows),
});
