import type { Crop } from '../crop.js';

/** A tender seedling is looked after for so long [d]; how cold it may get then, by the crop's hardiness [°C]. */
const SEEDLING_DAYS = 30;
const LIMITS_C = { tender: 0, 'half-hardy': -2 } as const;

/** How cold the air may get over a crop's seedlings, and for how many days after the first. */
export interface FrostExposure {
  /** At this minimum and below they are harmed [°C]. */
  readonly limitC: number;
  readonly days: number;
}

/**
 * What frost means to a crop's seedlings; a tender crop that is counted from its sowing is exposed until it is ripe.
 *
 * @returns null: it is hardy, or nothing is known of it.
 *
 * Source: the classes are the crops' own; limits and 30 days are common practice, no source.
 * @example frostExposure(cabbage) // => null
 */
export function frostExposure({ frost, maturity }: Pick<Crop, 'frost' | 'maturity'>): FrostExposure | null {
  if (frost !== 'tender' && frost !== 'half-hardy') return null;
  const untilRipe = frost === 'tender' && maturity?.countedFrom === 'sowing' ? maturity.fromDays : 0;
  return { limitC: LIMITS_C[frost], days: Math.max(SEEDLING_DAYS, untilRipe) };
}
