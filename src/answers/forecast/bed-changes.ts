import type { BedMake, Moisture } from '../../seedbed/bed.js';
import type { Bedding } from '../question.js';
import type { SoilRecord } from '../soil/soil-record.js';
import { bedChangedK } from './bed-changed.js';
import type { BedChange } from './remedies.js';

/** What keeping a bed wet makes of it; a dry bed is moist once it has been watered. */
const WETTER: Record<Moisture, Moisture | null> = { rain: 'moist', moist: 'wet', dry: 'wet', wet: null };

/**
 * What can be done to a bed against heat, each run over the hours since wetting.
 *
 * @param soil    What is known of the bed as it is.
 * @param bedding The place, the bed and the depth.
 * @param wetH    The hour of wetting on the record's clock.
 * @param nHours  How many hours from then on.
 */
export function bedChanges(soil: SoilRecord, bedding: Bedding, wetH: number, nHours: number): BedChange[] {
  const { bed } = bedding;
  if (bed.kind === 'indoors') return [];
  // A dry bed has been watered by then.
  const watered: Bedding = { ...bedding, bed: bed.moisture === 'dry' ? { ...bed, moisture: 'moist' } : bed };
  const changes: (Omit<BedChange, 'warmerK'> & { readonly change: Partial<BedMake> })[] = [
    {
      action: 'shade',
      text: (cooler) =>
        `Shade the row by half through the hot hours: about ${cooler} cooler at the seed in the afternoon. These degrees are worked out, not measured in a seedbed. Take the shade off once seedlings show.`,
      change: { shadePercent: 100 - (100 - bed.shadePercent) / 2 },
    },
  ];
  const wetter = WETTER[bed.moisture];
  if (wetter) {
    changes.push({
      action: 'keep-wet',
      text: (cooler) =>
        `Keep the surface ${wetter} through the hot hours: about ${cooler} cooler at the seed in the afternoon; the evidence is thin. Water lightly and often, and follow local rules where watering is restricted.`,
      change: { moisture: wetter },
    });
  }
  if (bed.cover === 'black-film' || bed.cover === 'clear-film' || bed.cover === 'fleece') {
    changes.push({
      action: 'cover',
      text: (cooler) =>
        `Take the ${bed.cover.replace('-', ' ')} off through the heat: about ${cooler} cooler at the seed in the afternoon.`,
      change: { cover: 'bare' },
    });
  } else if (bed.cover === 'bare') {
    changes.push({
      action: 'cover',
      text: (cooler) =>
        `Cover the row loosely with straw or a board through the heat: about ${cooler} cooler at the seed in the afternoon, worked out and not measured there. It keeps the nights warmer as well. Look under it every day, and take it off when the first seedling shows.`,
      change: { cover: 'mulch' },
    });
  }
  const warmerK = bedChangedK(
    soil,
    watered,
    changes.map(({ change }) => change),
    wetH,
    nHours,
  );
  return changes.map(({ action, text }, i) => ({ action, text, warmerK: warmerK[i]! }));
}
