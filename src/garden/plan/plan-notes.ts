import { THIN_YEARS } from '../../answers/ahead/past-soil.js';
import type { Grade } from '../../answers/windows/grades.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { HARDENING_DAYS } from '../../growth/tray-dates.js';
import { FULL_PACE_H, HALF_PACE_H, NOMINAL_C } from '../sowing/harvest.js';
import { type HarvestPeriod, weeksOfHarvest } from '../sowing/harvest-period.js';
import type { Advice, GapFact, PlanAssumption, PlanWarning } from './plan-facts.js';
import type { PlanStart } from './starts.js';

/** Why nothing reaches a week of harvest. */
export const gapWhys = ['too-hot', 'too-cold', 'frost', 'too-late', 'maturity-unknown'] as const;
export type GapWhy = (typeof gapWhys)[number];

/** A gap in a plan. */
export function gapFact(why: GapWhy, { id, name, frost }: Pick<Crop, 'id' | 'name' | 'frost'>): GapFact {
  const crop = cropInFacts({ id, name });
  if (why === 'frost') return { code: 'gap.frost', params: { crop, isTender: frost === 'tender' ? 'yes' : 'no' } };
  return { code: `gap.${why}`, params: { crop } };
}

/** So many hot hours are worth a shade. */
const HOT_HOURS = 6;
/** Seed that takes so many times the crop's best lies long. Our assumption. */
const LONG_TIMES = 3;

/** What to do about one sowing of a plan. */
export function adviceOn({ method, isShaded, hotHours, half, day }: PlanStart, crop: Crop, roomC: number): Advice[] {
  if (method === 'indoors') return [{ code: 'start-indoors', params: { roomC } }];
  const advice: Advice[] = [];
  if (isShaded || hotHours >= HOT_HOURS) {
    advice.push(
      {
        code: 'shade',
        params: {
          hotHours: isShaded ? null : Math.round(hotHours),
          hotThresholdC: Math.round(crop.hotThresholdC),
        },
      },
      { code: 'sow-in-evening', params: {} },
    );
    if (crop.weeksInTrays !== null) advice.push({ code: 'start-indoors', params: { roomC: null } });
  }
  const best = Math.min(...crop.rows.flatMap(({ days }) => (days === null ? [] : [days])));
  if (half && half.p50 - day > LONG_TIMES * best && half.p50 - day > crop.maxDays) {
    advice.push({ code: 'lies-long', params: {} });
  }
  return advice;
}

/** The help that a sowing rests on where its date is poor in the bed as it is; null: it needs none. */
export function insteadOn(
  { method, isShaded }: PlanStart,
  grade: Grade,
  crop: Crop,
  roomC: number,
): {
  readonly action: 'shade' | 'start-indoors';
  readonly text: Advice;
} | null {
  if (grade !== 'poor') return null;
  if (method === 'indoors') return { action: 'start-indoors', text: { code: 'start-indoors', params: { roomC } } };
  if (!isShaded) return null;
  const hotThresholdC = Math.round(crop.hotThresholdC);
  return { action: 'shade', text: { code: 'shade', params: { hotHours: null, hotThresholdC } } };
}

/** What every plan of a crop rests on. */
export function assumptionsOf(
  crop: Crop,
  picking: HarvestPeriod,
  {
    years,
    kind,
    roomC,
    isJudged,
  }: {
    readonly years: number;
    readonly kind: 'past-years' | 'typical-years';
    readonly roomC: number;
    readonly isJudged: boolean;
  },
): PlanAssumption[] {
  const { fromDays, toDays, countedFrom } = crop.maturity!;
  const { weeksInTrays } = crop;
  return [
    years === 0 ? { code: 'normals', params: { about: 'plan' } } : { code: kind, params: { about: 'plan', years } },
    isJudged
      ? {
          code: 'harvest-in-years',
          params: { pickDays: picking.toDays - picking.fromDays, weeks: weeksOfHarvest(picking) },
        }
      : {
          code: 'harvest',
          params: {
            fromDays,
            toDays,
            countedFrom,
            nominalC: NOMINAL_C,
            pickFromDays: picking.fromDays,
            pickToDays: picking.toDays,
            weeks: weeksOfHarvest(picking),
            fullPaceHours: FULL_PACE_H,
            halfPaceHours: HALF_PACE_H,
          },
        },
    { code: 'dates-graded', params: {} },
    { code: 'even-emergence', params: {} },
    { code: 'chart-time', params: { timesInBeds: crop.bedTimeFactor.to } },
    { code: 'seeds', params: {} },
    weeksInTrays === null
      ? { code: 'stays-put', params: { crop: cropInFacts(crop) } }
      : { code: 'indoors', params: { roomC, weeksInTrays, hardeningDays: HARDENING_DAYS } },
  ];
}

export const warningsOf = (
  crop: Crop,
  {
    years,
    airIsKnown,
    isTrayKnown,
    isJudged,
  }: {
    readonly years: number;
    readonly airIsKnown: boolean;
    readonly isTrayKnown: boolean;
    readonly isJudged: boolean;
  },
): PlanWarning[] => [
  ...(years > 0 && years < THIN_YEARS ? [{ code: 'thin-years', params: { about: 'plan', years } } as const] : []),
  ...(airIsKnown ? [] : [{ code: 'frost-unknown', params: { about: 'plan' } } as const]),
  ...(isTrayKnown || crop.weeksInTrays === null
    ? []
    : [{ code: 'planting-out-unknown', params: { crop: cropInFacts(crop) } } as const]),
  { code: 'weather-of-growth', params: { crop: cropInFacts(crop), isJudged: isJudged ? 'yes' : 'no' } },
];
