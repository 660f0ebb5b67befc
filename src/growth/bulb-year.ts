import type { BulbHarvest } from '../germination/growth.js';
import { type AirOfYear, type Fate, NOTHING, UNKNOWN } from './fate.js';
import { seasonDayOf, YEAR_DAYS } from './season-day.js';

/** From this day of the growing year on what comes up is to stand over winter: 1 September in the north [d]. */
const AUTUMN_DAY = 243;

/** The longest day, as a day of the growing year: 21 June in the north. */
const LONGEST_DAY = 171;

/**
 * The fate of a bulb that emerges on a day: leaves made before it swells set its size, whatever the temperature.
 *
 * @param harvest When it swells and is ripe.
 * @param air     The year's.
 * @param up      The day of its emergence, counted from the air's first.
 *
 * Rule: it swells from the tenth day after the longest on, and needs 45 days of leaves before; or it comes up from 1 September on and
 * no minimum of -10 °C or below comes before it swells.
 * Source: Brewster 2008; Oregon State University Extension; the rule for autumn is common practice, no source.
 */
export function bulbFate(harvest: BulbHarvest, air: AirOfYear, up: number): Fate {
  const { swellsAfterDays, ripensInDays, leastLeafDays, endFrostC } = harvest;
  const day = seasonDayOf(((air.firstDayOfYear + up - 1) % YEAR_DAYS) + 1, air.latitudeDeg);
  const swellsDay = LONGEST_DAY + swellsAfterDays;
  const isAutumn = day >= AUTUMN_DAY;
  if (!isAutumn && day > swellsDay - leastLeafDays) return { ...NOTHING, why: 'day-length' };
  const swells = up + swellsDay - day + (isAutumn ? YEAR_DAYS : 0);
  const ripe = swells + ripensInDays;
  if (isAutumn) {
    for (let i = up; i < Math.min(swells, air.minC.length); i++) {
      if (air.minC[i]! <= endFrostC) return { ...NOTHING, why: 'frost-before-harvest', endDay: i };
    }
    if (swells > air.minC.length) return UNKNOWN;
  }
  return { earlyDay: ripe, harvestDay: ripe, lateDay: ripe, endDay: NaN, why: null };
}
