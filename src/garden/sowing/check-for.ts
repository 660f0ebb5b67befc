import type { Forecast } from '../../answers/forecast/forecast.js';
import { DEEP_FACTOR } from '../../answers/forecast/forecast-notes.js';
import type { QuestionBed } from '../../answers/question.js';
import type { PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { MIN_HOURS_ON_A_DAY } from '../../germination/run/spells.js';
import { POOR_PERCENT } from '../lots/seeds-needed.js';
import type { Count } from '../store/season-store.js';
import type { CheckFact } from './triage-facts.js';

export const checkCodes = ['dry', 'crust', 'too-deep', 'old-seed', 'heat', 'cold', 'eaten', 'wrong-date'] as const;

/** Something that may have kept a row from coming up, and is to be looked for. */
export interface Check {
  readonly code: (typeof checkCodes)[number];
  /** True if what is known of the row points to it. */
  readonly likely: boolean;
  readonly text: CheckFact;
}

/** The known facts about a row of which little or nothing came up. */
export interface BareRow {
  readonly crop: Crop;
  readonly bed: Pick<QuestionBed, 'kind' | 'cover' | 'moisture'>;
  readonly sowing: Forecast['sowing'];
  readonly today: PlainDate;
  readonly daily: Forecast['daily'];
  readonly hotSpells: Forecast['hotSpells'];
  readonly coldSpells: Forecast['coldSpells'];
  readonly hotThresholdC: number;
  /** null: nothing is known of the seed. */
  readonly seed: { readonly isOld: boolean; readonly germinationPercent: number | null } | null;
  /** The fullest count before the last, where half of it has gone since; null: there is none. */
  readonly eatenSince: Pick<Count, 'date' | 'seedlings'> | null;
  /** The odds of a harvest of a sowing on its date, from past years; null: they do not tell. */
  readonly dateOdds: number | null;
}

/** Under so many good years in all a date is a poor one. */
const POOR_DATE_ODDS = 0.5;

/** Why little or nothing of a row came up: what is likely first, then what cannot be ruled out from what is known. */
export function checksFor(row: BareRow): Check[] {
  const all = [dry(row), crust(row), tooDeep(row), oldSeed(row), heat(row), cold(row), eaten(row), wrongDate(row)];
  const checks = all.flatMap((one) => one ?? []);
  return [...checks.filter(({ likely }) => likely), ...checks.filter(({ likely }) => !likely)];
}

const isIndoors = ({ bed: { kind } }: BareRow): boolean => kind === 'indoors';

/** A bed that is left to the rain, or is dry. */
function dry({ bed: { moisture } }: BareRow): Check | null {
  if (moisture === 'wet') return null;
  const likely = moisture === 'rain' || moisture === 'dry';
  return { code: 'dry', likely, text: { code: 'check.dry', params: { moisture } } };
}

/** Bare ground, under a crop whose seedlings cannot lift it. */
function crust(row: BareRow): Check | null {
  const { bed, crop } = row;
  if (bed.cover !== 'bare' || (bed.kind !== 'open-ground' && bed.kind !== 'raised-bed')) return null;
  const likely = crop.cautions.some(({ code }) => code === 'crust');
  return { code: 'crust', likely, text: { code: 'check.crust', params: {} } };
}

function tooDeep({ crop: { sowingDepthCm: usualCm }, sowing: { depthCm } }: BareRow): Check | null {
  if (usualCm === null || depthCm <= usualCm) return null;
  const likely = depthCm > DEEP_FACTOR * usualCm;
  return { code: 'too-deep', likely, text: { code: 'check.too-deep', params: { depthCm, usualCm } } };
}

function oldSeed({ crop: { storageYears }, seed }: BareRow): Check | null {
  const percent = seed?.germinationPercent ?? null;
  const isPoor = percent !== null && percent < POOR_PERCENT;
  if (seed && !seed.isOld && !isPoor) return null;
  const known = seed === null ? 'nothing' : isPoor ? 'poor' : 'old';
  const germinationPercent = isPoor ? Math.round(percent) : null;
  return {
    code: 'old-seed',
    likely: seed !== null,
    text: { code: 'check.old-seed', params: { known, storageYears, germinationPercent } },
  };
}

/** Hours above the threshold up to today; a severe spell holds or takes the seed, a mild one only delays it. */
function heat({ daily, hotSpells, hotThresholdC, today }: BareRow): Check | null {
  const hours = daily.reduce((sum, { date, hotHours }) => (date <= today ? sum + hotHours : sum), 0);
  if (hours < MIN_HOURS_ON_A_DAY) return null;
  const likely = (hotSpells ?? []).some(({ from, severity }) => from <= today && severity === 'severe');
  const thresholdC = Math.round(10 * hotThresholdC) / 10;
  return { code: 'heat', likely, text: { code: 'check.heat', params: { hours, thresholdC } } };
}

/** Soil colder up to today than the crop comes up in; or a cold spell on seed that it harms most as it drinks. */
function cold({ crop: { soil }, daily, coldSpells, today }: BareRow): Check | null {
  const past = daily.filter(({ date }) => date <= today);
  if (soil === null || past.length === 0) return null;
  const meanC = past.reduce((sum, { mean }) => sum + mean, 0) / past.length;
  if (meanC < soil.minimumC) {
    const params = { meanC: Math.round(10 * meanC) / 10, minimumC: Math.round(10 * soil.minimumC) / 10 };
    return { code: 'cold', likely: true, text: { code: 'check.cold', params } };
  }
  const spells = (coldSpells ?? []).filter(({ from }) => from <= today);
  if (spells.length === 0) return null;
  const likely = spells.some(({ severity, hoursInFirstDay }) => severity === 'severe' || hoursInFirstDay > 0);
  const hours = spells.reduce((sum, spell) => sum + spell.hours, 0);
  const thresholdC = Math.round(10 * spells[0]!.thresholdC) / 10;
  return { code: 'cold', likely, text: { code: 'check.cold-spell', params: { hours, thresholdC } } };
}

function eaten(row: BareRow): Check | null {
  if (isIndoors(row)) return null;
  const { eatenSince: before } = row;
  return {
    code: 'eaten',
    likely: before !== null,
    text: { code: 'check.eaten', params: { beforeOn: before?.date ?? null, beforeSeedlings: before?.seedlings ?? 0 } },
  };
}

function wrongDate({ dateOdds, sowing }: BareRow): Check | null {
  if (dateOdds === null || dateOdds >= POOR_DATE_ODDS) return null;
  const params = { sownOn: sowing.date, goodPercent: Math.round(100 * dateOdds) };
  return { code: 'wrong-date', likely: true, text: { code: 'check.wrong-date', params } };
}
