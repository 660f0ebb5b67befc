import type { QuestionBed } from '../question.js';
import type { Remedy } from './remedies/remedies.js';
import type { SpellAnswer } from './remedies/spell-answers.js';
import type { SafetyNote } from './safety-facts.js';

const COMMON = 'common practice, no source';
const ELECTRICITY: SafetyNote = { code: 'electricity-near-water', params: {}, source: COMMON };
const MOULD: SafetyNote = { code: 'mould-on-paper', params: {}, source: COMMON };
const DUST: SafetyNote = {
  code: 'compost-dust',
  params: {},
  source:
    'Workplace Health and Safety Queensland, and Southern District Health Board of New Zealand, on Legionella longbeachae',
};
const FILM: SafetyNote = { code: 'hot-clear-film', params: {}, source: COMMON };
const HEAT: SafetyNote = { code: 'heat-for-you', params: {}, source: COMMON };

/** Bare soil at the seed is some 5 to 8 K hotter at its peak than the air: from so much on the day is hot for people, too [°C]. Our judgement. */
const HOT_FOR_PEOPLE_C = 35;

const needsPower = ({ action }: Remedy): boolean => action === 'start-indoors' || action === 'presprout-warm';
const needsPaper = ({ action }: Remedy): boolean => action === 'presprout-cool' || action === 'presprout-warm';

/** Cautions about a bed, once each: trays and rooms, pots of compost, clear film. */
export const bedSafety = ({ kind, cover }: Pick<QuestionBed, 'kind' | 'cover'>): SafetyNote[] => [
  ...(kind === 'indoors' ? [ELECTRICITY] : []),
  ...(kind === 'indoors' || kind === 'pot' || kind === 'tray' ? [DUST] : []),
  ...(cover === 'clear-film' && kind !== 'indoors' ? [FILM] : []),
];

/** Cautions about trays that a remedy needs, in any bed. */
const traySafety: readonly SafetyNote[] = [ELECTRICITY, DUST];

/** Cautions about a plan: its bed, and trays if some of its sowings stand in them. */
export const planSafety = (bed: Pick<QuestionBed, 'kind' | 'cover'>, hasTrays: boolean): SafetyNote[] => [
  ...new Set([...bedSafety(bed), ...(hasTrays ? traySafety : [])]),
];

/** Cautions about a sowing: its bed, the remedies against its spells, and working in such heat. */
export function sowingSafety(
  bed: Pick<QuestionBed, 'kind' | 'cover'>,
  { hot, cold }: { readonly hot: readonly SpellAnswer[]; readonly cold: readonly SpellAnswer[] },
): SafetyNote[] {
  const remedies = [...hot, ...cold].flatMap((spell) => spell.remedies);
  const isHot = bed.kind !== 'indoors' && hot.some(({ peakC }) => peakC >= HOT_FOR_PEOPLE_C);
  const notes = [
    ...bedSafety(bed),
    ...(remedies.some(needsPower) ? traySafety : []),
    ...(remedies.some(needsPaper) ? [MOULD] : []),
    ...(isHot ? [HEAT] : []),
  ];
  return [...new Set(notes)];
}
