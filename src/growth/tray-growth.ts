import type { Crop } from '../germination/crop.js';
import type { Growth, PlantingOut } from '../germination/growth.js';
import { dayUnits } from './day-units.js';
import type { KindSpread } from './growth-in-year.js';
import { DEFAULT_ROOM_C, WEEKS_TO_COME_UP } from './tray-dates.js';

/**
 * Share of the room's heat units that a plant keeps: it has little light and root, and being moved checks it.
 * Cabbages from trays are so two to three weeks ahead of those sown in place. Assumed.
 */
const KEPT_OF_TRAY = 0.5;

/**
 * The heat units that a crop still needs from its planting out on.
 *
 * @param growth Where heat units count from planting out they stay; where they count from emergence, half of those of the tray are had.
 * @param kinds  Early and late kinds, beside middling ones sown in place.
 * @param needs  How long it stands in its tray.
 * @returns The same for plants: fewer heat units, and the same kinds beside them.
 *
 * Formula: units - 0.5 · 7 · (weeks - 1) · u(20 °C), never below a tenth
 * Source: assumed; see `KEPT_OF_TRAY`.
 * @example of leaf lettuce, 615 °C·d, after 5 weeks // => 615 - 0.5 · 28 · 15.6 = 396.6
 */
export function fromTray(
  growth: Growth,
  kinds: KindSpread,
  { weeksFromSowing }: PlantingOut,
): { readonly growth: Growth; readonly kinds: KindSpread } {
  const { harvest } = growth;
  if (harvest?.by !== 'heat' || harvest.countedFrom === 'planting-out') return { growth, kinds };
  const { heatUnitsCDays: units, baseTempC, ceilingTempC } = harvest;
  const inTrayDays = 7 * (weeksFromSowing - WEEKS_TO_COME_UP);
  const had = KEPT_OF_TRAY * inTrayDays * dayUnits(DEFAULT_ROOM_C, baseTempC, ceilingTempC);
  const left = (share: number): number => Math.max(MIN_LEFT * units, share * units - had);
  return {
    growth: { ...growth, harvest: { ...harvest, heatUnitsCDays: left(1) } },
    kinds: { early: left(kinds.early) / left(1), late: left(kinds.late) / left(1) },
  };
}
/** No plant is ripe when it goes out. */
const MIN_LEFT = 0.1;

/**
 * Growth of a crop that is sown in place though its heat units count from planting out: those of the tray come in addition.
 *
 * @param crop Its growth and its time in trays.
 * @returns The same growth for crops whose units count from emergence.
 *
 * Formula: units + 7 · weeks · u(20 °C)
 * Source: assumed; a tray stands in a room of 20 °C.
 * @example of tomato, 805 °C·d, 6 weeks in the tray, base 10 °C // => 805 + 42 · 10 = 1225
 */
export function sownInPlace({ growth, plantingOut }: Pick<Crop, 'growth' | 'plantingOut'>): Growth | null {
  const harvest = growth?.harvest;
  if (!growth || harvest?.by !== 'heat' || harvest.countedFrom !== 'planting-out' || !plantingOut) return growth;
  const { heatUnitsCDays, baseTempC, ceilingTempC } = harvest;
  const inTray = 7 * plantingOut.weeksFromSowing * dayUnits(DEFAULT_ROOM_C, baseTempC, ceilingTempC);
  return { ...growth, harvest: { ...harvest, heatUnitsCDays: heatUnitsCDays + inTray } };
}
