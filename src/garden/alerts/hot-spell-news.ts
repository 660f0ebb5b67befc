import type { SpellAnswer } from '../../answers/forecast/spell-answers.js';
import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { SowingNow } from '../sowing/known-now.js';
import { inBed, sownInBed } from './in-bed.js';
import type { News } from './news.js';

type ToldSpell = Pick<SpellAnswer, 'from' | 'to' | 'severity'>;

/** More than this is not foretold. */
const MAX_SPELLS = 10;

/** A spell that begins and ends within a day of one that was told is that one: an hour more or less moves a date [d]. */
const SAME_SPELL_DAYS = 1;

/**
 * What is new of the heat ahead of a sowing: a spell that was not told of, or was two days away from these dates, or mild
 * where it is severe. One that is no longer expected, or is milder, is not told of; should it come back, it is known.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: the temperatures do not show spells, and what was told stands.
 */
export function hotSpellNews({ sowing, crop, today, forecast }: SowingNow, told: string | null): News | undefined {
  const hotSpells = forecast?.hotSpells;
  if (!hotSpells) return undefined;
  const ahead = hotSpells.filter(({ to }) => to >= today).slice(0, MAX_SPELLS);
  const before = told === null ? [] : (JSON.parse(told) as ToldSpell[]).filter(({ to }) => to >= today);
  const toldOf = (spell: ToldSpell) => before.find((one) => covers(one, spell));
  const first = ahead.find((spell) => !toldOf(spell));
  if (!first) return { mark: markOf(before), data: null };
  return {
    // Of those that are known, as they were told: small moves add up.
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

/** Is a spell the one that was told, and no worse? */
const covers = (told: ToldSpell, { from, to, severity }: ToldSpell): boolean =>
  isNear(told.from, from) && isNear(told.to, to) && (told.severity === severity || told.severity === 'severe');

const isNear = (one: PlainDate, other: PlainDate): boolean => Math.abs(daysBetween(one, other)) <= SAME_SPELL_DAYS;

const markOf = (spells: readonly ToldSpell[]): string | null =>
  spells.length === 0 ? null : JSON.stringify(spells.map(({ from, to, severity }) => ({ from, to, severity })));

const tenth = (tempC: number): number => Math.round(10 * tempC) / 10;
