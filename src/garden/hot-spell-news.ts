import type { SpellAnswer } from '../answers/spell-answers.js';
import type { SowingNow } from './known-now.js';
import type { News } from './news.js';
import { inBed, sownWords } from './news-words.js';

type ToldSpell = Pick<SpellAnswer, 'from' | 'to' | 'severity'>;

/** More than this is not foretold. */
const MOST_SPELLS = 10;

/**
 * What is new of the heat ahead of a sowing: a spell that was not told of, or not with these dates and this severity.
 * One that is no longer expected is not told of; should it come back as it was, it is known.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: the temperatures do not show spells, and what was told stands.
 */
export function hotSpellNews({ sowing, crop, today, forecast }: SowingNow, told: string | null): News | undefined {
  const hotSpells = forecast?.hotSpells;
  if (!hotSpells) return undefined;
  const ahead = hotSpells.filter(({ to }) => to >= today).slice(0, MOST_SPELLS);
  const before = told === null ? [] : (JSON.parse(told) as ToldSpell[]).filter(({ to }) => to >= today);
  const isKnown = ({ from, to, severity }: ToldSpell) =>
    before.some((one) => one.from === from && one.to === to && one.severity === severity);
  const [first] = ahead.filter((spell) => !isKnown(spell));
  if (!first) return { mark: markOf(before), data: null };
  const more = ahead.length > 1 ? ` In all ${ahead.length} hot spells lie ahead of it.` : '';
  return {
    mark: markOf(ahead),
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
      text: `Heat lies ahead of ${sownWords(sowing, crop)}: from ${first.from} to ${first.to} it gets up to ${first.peakC.toFixed(1)} °C at the seed, which is held back above ${first.thresholdC.toFixed(1)} °C (${first.severity}).${more} Shade and water help; follow local watering rules.`,
    },
  };
}

const markOf = (spells: readonly ToldSpell[]): string | null =>
  spells.length === 0 ? null : JSON.stringify(spells.map(({ from, to, severity }) => ({ from, to, severity })));
