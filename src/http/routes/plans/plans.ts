import { orAsKept } from '../../../contract/kept.js';
import { planAnswerSchema, planListSchema, planPutSchema } from '../../../contract/plans.js';
import { type BedInputs, bedInputsOf, inputsOfRows } from '../../../garden/bed/bed-inputs.js';
import { bedInputsIn, bedRows, type PlaceRecords } from '../../../garden/bed/bed-records.js';
import { namingSources } from '../../../garden/bed/naming-sources.js';
import type { GardenPlan } from '../../../garden/plan/plan.js';
import { planQuestionOf } from '../../../garden/plan/plan-question.js';
import type { Plan, PlanFields } from '../../../garden/store/season-store.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import { ownerOf } from '../../auth/owner.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { credited } from '../../question/credited.js';
import type { Service } from '../../question/endpoint.js';
import { examplePlan } from '../../question/examples.js';
import { putOperation } from '../../resource/change-routes.js';
import {
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
  keptIn,
  noSuch,
  putAndAnswer,
  type Repository,
  readPut,
  refuseQuery,
  resourceNotFound,
  type ShownResource,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteRoute, listRoute } from '../../resource/resource-routes.js';
import { serializePlan, serializePlanFields } from './plan-serializer.js';

/** Maximum sowings of a bed that are considered, the latest. */
const MAX_SOWINGS = 100;
/** Problems of a plan's inputs. */
const planProblems = ['no-past-years', 'busy'] as const;
const planSchemas = { kind: 'plan', put: planPutSchema, answer: planAnswerSchema } as const;

/** The routes of plans: harvests, and the sowings for them. */
export const planRoutes = (service: Service): Route[] => {
  const { store, clock } = service;
  const list = {
    kind: 'plan',
    summary: 'Your plans, by id, without their sowings, of all beds or one',
    schema: planListSchema,
    list: store.plans,
    onWire: serializePlanFields,
    byBed: true,
  } as const;
  return [
    listRoute(list, clock),
    putPlan(service),
    getPlan(service),
    deleteRoute('plan', 'Delete a plan', ({ askedBy }) => plansFor(service, askedBy()), store.deletePlan),
  ];
};

const putPlan = (service: Service): Route => ({
  method: 'PUT',
  url: '/v1/plans/:id',
  operation: putOperation({
    ...planSchemas,
    summary: 'Store or replace a wanted harvest, and get the sowings for it',
    description:
      'The sowings are worked out for each request, from the past years of the bed’s place. The place needs at least three years of daily air temperatures, or normals; a plan that cannot be worked out is not stored. A week counts plants that become ready: tomatoes and beans bear for weeks, so plan fewer of them.',
    example: examplePlan,
    problems: ['unknown-bed', 'unknown-crop', ...planProblems],
  }),
  async handler(request, reply) {
    refuseQuery(request);
    const id = idIn(request, 'plan');
    const fields = readPut(planPutSchema, planAnswerSchema, request.body);
    const by = request.askedBy();
    by.takePlace?.();
    const { store, clock } = service;
    const kept = await bedInputsOf(store, ownerOf(request), fields.bed, clock().getTime());
    if (!kept) throw noSuch('bed', fields.bed);
    // A plan that cannot be worked out is not stored.
    const planned = { plan: await planFor(service, by, fields, kept), kept };
    return putAndAnswer(request, reply, id, plansFor(service, by, planned), () => fields, clock);
  },
});

const getPlan = (service: Service): Route => ({
  method: 'GET',
  url: '/v1/plans/:id',
  operation: {
    id: 'getPlan',
    summary: 'One plan: what to sow and when, and the gaps that heat or frost will leave',
    query: [asParameter],
    answer: { schema: orAsKept(planAnswerSchema, planPutSchema) },
    problems: ['not-found', ...planProblems, ...keptProblems],
  },
  async handler(request, reply) {
    const { store, clock, answers } = service;
    const isAsKept = isAskedAsKept(request);
    const plan = await keptIn(request, 'plan', store.plan);
    if (isAsKept) return sendAsKept(request, reply, plan.revision, fieldsOf(planPutSchema, plan));
    const { inputs, answer } = await showPlan(service, plan, request.askedBy());
    return answers.send({ request, reply, owner: ownerOf(request) }, inputs, async () =>
      asJson(signed(await answer(), clock()), request),
    );
  },
});

/** A plan that was worked out, and what it rests on. */
interface Planned {
  readonly plan: GardenPlan;
  readonly kept: BedInputs;
}

/** How plans are stored and shown to a caller. @param planned The result for the plan that is being stored. */
const plansFor = (service: Service, by: AskedBy, planned?: Planned): Repository<Plan, PlanFields> => ({
  find: service.store.plan,
  async put(owner, id, fields, ifRevision) {
    const done = await service.store.putPlan(owner, id, fields, ifRevision);
    if (done.outcome === 'no-bed') throw noSuch('bed', fields.bed);
    return done;
  },
  show: (plan) => showPlan(service, plan, by, planned),
  ...(planned && { showInPart: (plan: Plan) => credited(serializePlan(plan, planned.plan), planned.kept) }),
});

async function showPlan(service: Service, plan: Plan, by: AskedBy, planned?: Planned): Promise<ShownResource> {
  const { store, clock } = service;
  const { owner } = by;
  const rows = await bedRows(store, owner, plan.bed, clock().getTime());
  // The bed was deleted meanwhile.
  if (!rows) throw resourceNotFound('plan', plan.id);
  return {
    inputs: inputsOf(plan, rows),
    async answer() {
      if (planned) return credited(serializePlan(plan, planned.plan), planned.kept);
      by.takePlace?.();
      const kept = await inputsOfRows(store, owner, rows);
      return credited(serializePlan(plan, await planFor(service, by, plan, kept)), kept);
    },
  };
}

async function planFor({ store, work }: Service, by: AskedBy, plan: PlanFields, kept: BedInputs): Promise<GardenPlan> {
  const sowings = await store.sowingsOf(by.owner, plan.bed, MAX_SOWINGS);
  const known = sowings.map(({ sowing }) => sowing);
  return namingSources(kept, async () => work.ask('plan', planQuestionOf(plan, kept, kept.today, known), by));
}

/** Everything that a plan depends on. */
const inputsOf = (plan: Plan, rows: PlaceRecords): object => ({
  plan: [plan.id, plan.revision],
  ...bedInputsIn(rows),
});
