import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import type { Risk } from '../../growth/pests/pest-risks.js';
import { pestsMet, type RisksAsked } from '../windows/risks-met.js';
import type { Milestone, NoMilestone } from './milestones.js';

/** A sowing, and what comes of it. */
export interface SownRow extends RisksAsked {
  readonly date: PlainDate;
  readonly half: Milestone | NoMilestone;
  readonly most: Milestone | NoMilestone;
  /** The count day. */
  readonly by: PlainDate;
  /** Mean of the soil at the seed until half is up [°C]. */
  readonly meanC: number;
}

/** Seed that takes so many times its best days, in soil below its best, is open to damping-off: practice lists say no number, this is ours. */
const SLOW_FACTOR = 1.5;

/** Risks to a sowing, in the order of dates. */
export function sowingRisks(sown: SownRow): Risk[] {
  const { date, most, by } = sown;
  const upBy = 'date' in most ? most.date : by;
  return [...(liesSlowly(sown) ? [dampingOff(date, upBy)] : []), ...pestsMet(sown, { from: date, upBy })];
}

function liesSlowly({ crop, half, meanC }: SownRow): boolean {
  if (crop.soil === null || meanC >= crop.soil.optimumFromC) return false;
  return 'why' in half || half.days > SLOW_FACTOR * bestDays(crop);
}

const bestDays = ({ rows }: Crop): number => Math.min(...rows.map(({ days }) => days ?? Infinity));

const dampingOff = (from: PlainDate, upBy: PlainDate): Risk => ({
  id: 'damping-off',
  threatens: 'seedling',
  from,
  to: addDays(upBy, DAYS_UNTIL_FIRM),
  peak: null,
  degreeDays: null,
  inYears: null,
  ofYears: null,
  text: { code: 'risk.damping-off', params: {} },
  source: 'University of California Integrated Pest Management, on damping-off; how slow is slow: our choice',
});

/** Seedlings are firm so long after they are up [d]: common practice, no source. */
const DAYS_UNTIL_FIRM = 14;
