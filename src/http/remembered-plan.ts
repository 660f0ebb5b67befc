import type { FindPast } from '../answers/past-soil.js';
import { type GardenPlan, gardenPlan } from '../garden/plan.js';
import type { PlanQuestion } from '../garden/plan-question.js';
import { digestOf, rememberedFind } from './remembered-find.js';

const MOST_KEPT = 64;

/** Plans, each worked out once: it is asked for before it is kept, and again right after. */
export const rememberedPlan = (findPast: FindPast): ((question: PlanQuestion) => GardenPlan) =>
  rememberedFind(
    MOST_KEPT,
    ({ series, site, ...rest }) => digestOf(series, { ...site, zone: site.zone.name }, rest),
    (question) => gardenPlan(question, findPast),
  );
