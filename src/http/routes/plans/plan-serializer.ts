import type { PlanAnswer, PlanWire } from '../../../contract/plans.js';
import type { GardenPlan } from '../../../garden/plan/plan.js';
import type { Plan } from '../../../garden/store/season-store.js';
import { forPeople } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';

/** Serializes the stored fields of a plan. */
export const serializePlanFields = ({ crop, ...rest }: Plan): PlanWire => ({
  ...rest,
  crop: crop as PlanWire['crop'],
});

/** Serializes a plan with its sowings. */
export function serializePlan(kept: Plan, found: GardenPlan): Omit<Unworded<PlanAnswer>, 'model' | 'issuedAt'> {
  return {
    ...serializePlanFields(kept),
    years: found.years,
    weeksPerSowing: found.weeksPerSowing,
    sowings: found.sowings.map(({ half, ...sowing }) => ({
      ...sowing,
      half: half.date,
      halfRange: half.range,
      sureness: sowing.sureness === null ? null : forPeople.share(sowing.sureness),
      advice: [...sowing.advice],
    })),
    gaps: [...found.gaps],
    cautions: [...found.cautions],
    assumptions: [...found.assumptions],
    warnings: [...found.warnings],
  };
}
