import type { Crop } from '../../germination/crop.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';
import { kindOfYears, THIN_YEARS } from '../ahead/past-soil.js';
import type { Bedding } from '../question.js';
import { STAND_DAYS } from './harvest-season.js';
import type { WindowQuestion } from './judged-dates.js';
import type { WindowNote } from './window-facts.js';

/** Assumptions of a windows answer. `years`: the number that judge, 0 for a climatological year. */
export const windowAssumptions = (question: WindowQuestion, years: number, isJudged: boolean): WindowNote[] => [
  years === 0
    ? { code: 'normals', params: { about: 'windows' } }
    : { code: kindOfYears(question), params: { about: 'windows', years } },
  ...(isJudged ? [harvestJudged(question, years)] : emergenceJudged(question)),
];

function harvestJudged({ crop, criteria }: WindowQuestion, years: number): WindowNote {
  const { patienceFactor, bedFactor } = crop.growth!;
  return {
    code: 'harvest-judged',
    params: {
      sharePercent: Math.round(100 * criteria.share),
      ifHeldPercent: Math.round(100 * criteria.shareIfHeld),
      standDays: Math.max(STAND_DAYS, criteria.maxDays),
      halfDays: Math.round((patienceFactor * criteria.maxDays) / bedFactor),
      years,
    },
  };
}

const emergenceJudged = ({ crop, criteria, judge, bed }: WindowQuestion): WindowNote[] => [
  ...(judge === 'emergence' ? [] : [{ code: 'harvest-not-judged', params: { why: whyNotJudged(crop, bed) } } as const]),
  {
    code: 'good-date',
    params: {
      sharePercent: Math.round(100 * criteria.share),
      ifHeldPercent: Math.round(100 * criteria.shareIfHeld),
      maxDays: criteria.maxDays,
      ...frostParams(crop),
    },
  },
];

/** Why no harvest is judged where it is asked for. */
function whyNotJudged({ growth }: Crop, { kind }: Bedding['bed']): 'crop' | 'indoors' | 'air' {
  if (!growth) return 'crop';
  return kind === 'indoors' ? 'indoors' : 'air';
}

/** Which frost makes a date a bad one, and how long after the first seedling. */
function frostParams(crop: Crop) {
  const exposure = frostExposure(crop);
  if (exposure === null) return { frost: 'not-counted', frostFreeDays: 0, frostC: 0 } as const;
  const { days: frostFreeDays, limitC: frostC } = exposure;
  if (crop.frost === 'half-hardy') return { frost: 'half-hardy', frostFreeDays, frostC } as const;
  const isSown = crop.maturity?.countedFrom === 'sowing';
  return { frost: isSown ? 'tender' : 'tender-planted-out', frostFreeDays, frostC } as const;
}

export function windowWarnings(
  { crop }: WindowQuestion,
  years: number,
  frostKnown: boolean,
  isJudged: boolean,
): WindowNote[] {
  const notes: WindowNote[] = [];
  if (years > 0 && years < THIN_YEARS) notes.push({ code: 'thin-years', params: { about: 'windows', years } });
  if (!frostKnown && (crop.frost === 'tender' || crop.frost === 'half-hardy')) {
    notes.push({ code: 'frost-unknown', params: { about: 'windows' } });
  }
  if (crop.frost === 'hardy' && !isJudged) notes.push({ code: 'frost-hardy', params: {} });
  return notes;
}
