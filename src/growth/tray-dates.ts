import { addDays, type PlainDate } from '../basics/calendar.js';
import type { Crop, FrostClass } from '../germination/crop.js';
import type { PlantingOut } from '../germination/growth.js';

/** A heated room where nobody says how warm it is [°C]. */
export const DEFAULT_ROOM_C = 20;

/** Days of hardening off; lists say 7 to 10. Common practice, no source. */
export const HARDENING_DAYS = 8;

/** The days before planting out on which plants stand outside by day and in by night; the last included. */
export const hardenOffBefore = (plantOut: PlainDate): { readonly from: PlainDate; readonly to: PlainDate } => ({
  from: addDays(plantOut, -HARDENING_DAYS),
  to: addDays(plantOut, -1),
});

/** When a tray is sown whose plants go out on a date. */
export const traySowing = ({ weeksFromSowing }: PlantingOut, plantOut: PlainDate): PlainDate =>
  addDays(plantOut, -7 * weeksFromSowing);

/** A few days for the seed to come up in a room, beside the weeks that a crop stands in its tray from then on [weeks]. */
export const WEEKS_TO_COME_UP = 1;

/**
 * Nights and soil that plants bear if no list names their crop, by its hardiness. Tender plants like tomatoes, half-hardy ones
 * no frost below -2 °C and hardy ones none below -5 °C for a month. Common practice, no source.
 */
const byHardiness: Readonly<Record<FrostClass, Omit<PlantingOut, 'weeksFromSowing'>>> = {
  tender: { frost: { limitC: 0, days: 45 }, nights: { by: 'mean', fairC: 10, goodC: 10 }, leastSoilC: 15.6 },
  'half-hardy': { frost: { limitC: -2, days: 30 }, nights: null, leastSoilC: null },
  hardy: { frost: { limitC: -5, days: 30 }, nights: null, leastSoilC: null },
};

/** When a crop may be planted out, by its own list, else by its hardiness; null: it does not bear to be moved. */
export function plantingOutOf({ plantingOut, weeksInTrays, frost }: TrayCrop): PlantingOut | null {
  if (plantingOut || weeksInTrays === null) return plantingOut;
  return { ...byHardiness[frost ?? 'tender'], weeksFromSowing: weeksInTrays + WEEKS_TO_COME_UP };
}

export type TrayCrop = Pick<Crop, 'plantingOut' | 'weeksInTrays' | 'frost'>;
