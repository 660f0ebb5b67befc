import type { BulbHarvest } from '../germination/growth.js';
import { type AirOfYear, endedBy, type Grower, UNKNOWN } from './fate.js';
import { frostAhead } from './frost-ahead.js';
import { seasonDayOf, YEAR_DAYS } from './season-day.js';

/** From this day of the growing year on what comes up is to stand over winter: 1 September in the north [d]. */
const AUTUMN_DAY = 243;

/** The longest day, as a day of the growing year: 21 June in the north. */
const LONGEST_DAY = 171;

/**
 * The fate of a bulb that emerges on a day, for every day of a year: leaves made before it swells set its size, whatever the
 * temperature.
 *
 * @param harvest When it swells and is ripe.
 * @param air     The year's.
 * @returns Asked with the day of its emergence, counted from the air's first.
 *
 * Rule: it swells from the tenth day after the longest on, and needs 45 days of leaves before; or it comes up from 1 September on and
 * no minimum of -10 °C or below comes before it swells.
 * Source: Brewster 2008; Oregon State University Extension; the rule for autumn is common practice, no source.
 */
export function bulbYear(harvest: BulbHarvest, air: AirOfYear): Grower {
  const { swellsAfterDays, ripensInDays, leastLeafDays, endFrostC } = harvest;
  const nDays = air.minC.length;
  const endFrost = frostAhead(air.minC, endFrostC);
  const swellsDay = LONGEST_DAY + swellsAfterDays;
  return (told, _, up) => {
    const day = seasonDayOf(((air.firstDayOfYear + up - 1) % YEAR_DAYS) + 1, air.latitudeDeg);
    const isAutumn = day >= AUTUMN_DAY;
    if (!isAutumn && day > swellsDay - leastLeafDays) return endedBy(told, 'day-length', NaN);
    const swells = up + swellsDay - day + (isAutumn ? YEAR_DAYS : 0);
    if (isAutumn) {
      const frozen = up + endFrost[up]!;
      if (frozen < swells) return endedBy(told, 'frost-before-harvest', frozen);
      if (swells > nDays) return UNKNOWN;
    }
    const ripe = swells + ripensInDays;
    endedBy(told, null, NaN);
    told.earlyDay = ripe;
    told.harvestDay = ripe;
    told.lateDay = ripe;
    return told;
  };
}
