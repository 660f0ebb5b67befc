import type { SpellAnswer } from '../../answers/forecast/remedies/spell-answers.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import { MIN_HOURS_ON_A_DAY } from '../../germination/run/spells.js';
import type { SowingNow } from '../sowing/known-now.js';
import { inBed, sownInBed } from './in-bed.js';
import type { News } from './news.js';

interface ToldSpell extends Pick<SpellAnswer, 'from' | 'to' | 'severity'> {
  /** True if it reaches to the end of the known temperatures; its end is then unknown. */
  readonly isOpen: boolean;
}
/** A spell as far as its hours are known. */
interface KnownSpell extends ToldSpell, Pick<SpellAnswer, 'hours' | 'peakC' | 'thresholdC'> {}

/** More than this is not foretold. */
const MAX_SPELLS = 10;

/** A spell that begins and ends within a day of one that was told is that one: an hour more or less moves a date [d]. */
const SAME_SPELL_DAYS = 1;

/**
 * What is new of the heat ahead of a sowing: a spell that was not told of, or was two days away from these dates, or mild
 * where it is severe. One that is no longer expected, or is milder, is not told of; should it come back, it is known. Only
 * hours that were measured or forecast make a spell here: what past years say in the mean is no news of this one.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: the temperatures do not show spells, and what was told stands.
 */
export function hotSpellNews({ sowing, crop, today, forecast }: SowingNow, told: string | null): News | undefined {
  const hotSpells = forecast?.hotSpells?.flatMap((spell) => knownSpell(spell, sowing.date, forecast.hours));
  if (!hotSpells) return undefined;
  const ahead = hotSpells.filter(({ to }) => to >= today).slice(0, MAX_SPELLS);
  const before = told === null ? [] : (JSON.parse(told) as ToldSpell[]).filter(({ to }) => to >= today);
  // Each new day of the forecast shows more of a spell that goes on: no news, but where it ends is learned.
  const known = before.map((one) => {
    const now = one.isOpen ? ahead.find((spell) => covers(one, spell)) : undefined;
    return now ? { ...one, to: now.to, isOpen: now.isOpen } : one;
  });
  const toldOf = (spell: ToldSpell) => known.find((one) => covers(one, spell));
  const first = ahead.find((spell) => !toldOf(spell));
  if (!first) return { mark: markOf(known), data: null };
  return {
    // Known spells are stored as last reported, because small moves add up.
    mark: markOf(ahead.map((spell) => toldOf(spell) ?? spell)),
    data: {
      ...inBed(sowing, crop),
      hotSpells: ahead.map(({ from, to, hours, peakC, thresholdC, severity }) => ({
        from,
        to,
        hours,
        peakC,
        thresholdC,
        severity,
      })),
      text: {
        code: 'news.hot-spell',
        params: {
          ...sownInBed(sowing, crop),
          from: first.from,
          to: first.to,
          peakC: tenth(first.peakC),
          thresholdC: tenth(first.thresholdC),
          severity: first.severity,
          spells: ahead.length,
        },
      },
    },
  };
}

/** The last basis of an hour that somebody measured or forecast: what comes after it is supposed. */
const FORECAST = basisCode('forecast');

/** A spell cut down to its known hours; none where they are too few on every day to be one. */
function knownSpell(
  { from, to, severity, thresholdC }: SpellAnswer,
  sown: PlainDate,
  hours: NonNullable<SowingNow['forecast']>['hours'],
): KnownSpell[] {
  if (!hours) return [];
  const [fromDay, toDay] = [daysBetween(sown, from), daysBetween(sown, to)];
  const hotOnDay = new Map<number, number>();
  let peakC = -Infinity;
  hours.tempC.forEach((tempC, i) => {
    const day = Math.floor(hours.atDay[i]!);
    if (day < fromDay || day > toDay || hours.basis[i]! > FORECAST || !(tempC > thresholdC)) return;
    hotOnDay.set(day, (hotOnDay.get(day) ?? 0) + 1);
    peakC = Math.max(peakC, tempC);
  });
  const lastDay = Math.floor(hours.atDay[hours.basis.findLastIndex((basis) => basis <= FORECAST)] ?? -1);
  const counts = [...hotOnDay.values()];
  if (!counts.some((count) => count >= MIN_HOURS_ON_A_DAY)) return [];
  const days = [...hotOnDay.keys()];
  return [
    {
      from: addDays(sown, days[0]!),
      to: addDays(sown, days.at(-1)!),
      hours: counts.reduce((sum, count) => sum + count, 0),
      peakC,
      thresholdC,
      severity,
      isOpen: days.at(-1)! >= lastDay,
    },
  ];
}

/** True if a spell is the one already reported, and no worse. */
const covers = (told: ToldSpell, { from, to, severity }: ToldSpell): boolean =>
  isNear(told.from, from) &&
  (told.isOpen || isNear(told.to, to)) &&
  (told.severity === severity || told.severity === 'severe');

const isNear = (one: PlainDate, other: PlainDate): boolean => Math.abs(daysBetween(one, other)) <= SAME_SPELL_DAYS;

const markOf = (spells: readonly ToldSpell[]): string | null =>
  spells.length === 0
    ? null
    : JSON.stringify(spells.map(({ from, to, severity, isOpen }) => ({ from, to, severity, isOpen })));

const tenth = (tempC: number): number => Math.round(10 * tempC) / 10;
