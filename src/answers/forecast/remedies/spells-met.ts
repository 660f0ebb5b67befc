import { dateAt, daysBetween, HOUR_MS, instantAt } from '../../../basics/calendar.js';
import { rateAt } from '../../../germination/curve/curve.js';
import { coldSpells, hotSpells, type Spell } from '../../../germination/run/spells.js';
import type { Emergence } from '../emergence.js';
import type { Sown } from '../sown.js';
import { bedChanges } from './bed-changes.js';
import { coldRemedies, EVENING, hotRemedies, type SpellSetting } from './remedies.js';
import { firstFreeDate, type SpellAnswer, spellAnswer } from './spell-answers.js';

/** Spells of heat and of cold, with what can be done about each; null where no swing of day and night is known. */
export interface SpellsMet {
  readonly hot: readonly SpellAnswer[] | null;
  readonly cold: readonly SpellAnswer[] | null;
  /** True even where no swing is known, so that `hot` is null. */
  readonly hasHotSpell: boolean;
}

/** Ratio of t90 to t50, with the sigma of most crops. */
const MOST_OVER_HALF = 1.5;

/** The spells that a sowing meets before most of it is up. Remedies are worked out only where there is a spell. */
export function spellsMet(sowing: Sown, { ownRun, ownOutcome }: Pick<Emergence, 'ownRun' | 'ownOutcome'>): SpellsMet {
  const { question, bedding, seed, viablePercent, record, period, hours } = sowing;
  const { countedC: hourlyC, progress: hourly } = hours;
  const dayOfHour = hours.dayOfHour.subarray(0, hourlyC.length);
  const sown = { seed, hourlyC, hourly, dayOfHour, countH: period.countH, viablePercent };
  const hot = hotSpells(sown, ownRun, ownOutcome);
  const cold = coldSpells(sown, ownRun, ownOutcome);
  const dated = (hour: number) => dateAt(period.imbibitionMs + hour * HOUR_MS, question.site.zone);
  const setting = (isHarmful: (tempC: number) => boolean): SpellSetting => ({
    ...settingOf(sowing, isHarmful),
    bedChanges: hot.length > 0 ? bedChanges(record.soil, bedding, record.imbibitionH, hot.at(-1)!.toH) : [],
  });
  const answers = (
    spells: readonly Spell[],
    remedies: typeof hotRemedies,
    isHarmful: (tempC: number) => boolean,
  ): SpellAnswer[] | null => {
    if (!record.showsSwing) return null;
    if (spells.length === 0) return [];
    const known = setting(isHarmful);
    return spells.map((spell) => spellAnswer(spell, dated, remedies(spell, known), known));
  };
  return {
    hot: answers(hot, hotRemedies, (tempC) => tempC > seed.hotThresholdC),
    cold: answers(cold, coldRemedies, (tempC) => tempC < (cold[0]?.thresholdC ?? -Infinity)),
    hasHotSpell: hot.length > 0,
  };
}

function settingOf(
  { question, seed, period, hours }: Sown,
  isHarmful: (tempC: number) => boolean,
): Omit<SpellSetting, 'bedChanges'> {
  const { crop, site, sowing } = question;
  const { imbibitionMs, waitH, by } = period;
  const { temperature, days, hourlyC, dayOfHour } = hours;
  return {
    hourlyC,
    dayOfHour,
    sowingTime: sowing.time,
    eveningH: waitH > 0 ? -1 : (instantAt(sowing.date, EVENING, site.zone) - imbibitionMs) / HOUR_MS,
    freeDate: firstFreeDate(days, temperature.hourlyC, {
      fromDay: daysBetween(sowing.date, dateAt(imbibitionMs, site.zone)) + 1,
      sowingH: Number(sowing.time.slice(0, 2)),
      progressAt: (tempC) => rateAt(seed.curve, tempC) / (24 * seed.timeFactor * MOST_OVER_HALF),
      isHarmful,
    }),
    lastDate: by,
    bearsMoving: crop.weeksInTrays !== null,
  };
}
