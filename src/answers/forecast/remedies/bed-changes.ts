import type { BedMake, Moisture } from '../../../seedbed/bed.js';
import type { Bedding } from '../../question.js';
import type { SoilRecord } from '../../soil/soil-record.js';
import { bedChangedK } from './bed-changed.js';
import type { BedChange } from './remedies.js';

/** What keeping a bed wet makes of it; a dry bed is moist once it has been watered. */
export const WETTER: Record<Moisture, 'moist' | 'wet' | null> = { rain: 'moist', moist: 'wet', dry: 'wet', wet: null };

/**
 * What can be done to a bed against heat, each run over the hours since wetting.
 *
 * @param soil    What is known of the bed as it is.
 * @param bedding The place, the bed and the depth.
 * @param imbibitionH    The hour of wetting on the record's clock.
 * @param nHours  How many hours from then on.
 */
export function bedChanges(soil: SoilRecord, bedding: Bedding, imbibitionH: number, nHours: number): BedChange[] {
  const { bed } = bedding;
  if (bed.kind === 'indoors') return [];
  // A dry bed has been watered by then.
  const watered: Bedding = { ...bedding, bed: bed.moisture === 'dry' ? { ...bed, moisture: 'moist' } : bed };
  const changes: (Omit<BedChange, 'warmerK'> & { readonly change: Partial<BedMake> })[] = [
    {
      action: 'shade',
      textOf: (cooler) => ({ code: 'action.shade', params: cooler }),
      change: { shadePercent: 100 - (100 - bed.shadePercent) / 2 },
    },
  ];
  const wetter = WETTER[bed.moisture];
  if (wetter) {
    changes.push({
      action: 'keep-wet',
      textOf: (cooler) => ({ code: 'action.keep-wet', params: { ...cooler, moisture: wetter } }),
      change: { moisture: wetter },
    });
  }
  const { cover } = bed;
  if (cover === 'black-film' || cover === 'clear-film' || cover === 'fleece') {
    changes.push({ action: 'cover', textOf: coverText(cover, bedding.depthCm), change: { cover: 'bare' } });
  } else if (cover === 'bare') {
    changes.push({ action: 'cover', textOf: coverText('mulch', bedding.depthCm), change: { cover: 'mulch' } });
  }
  const warmerK = bedChangedK(
    soil,
    watered,
    changes.map(({ change }) => change),
    imbibitionH,
    nHours,
  );
  return changes.map(({ action, textOf }, i) => ({ action, textOf, warmerK: warmerK[i]! }));
}

/** Film and fleece are to be taken off, mulch to be laid. */
const coverText =
  (cover: 'mulch' | 'black-film' | 'clear-film' | 'fleece', depthCm: number): BedChange['textOf'] =>
  ({ coolerK, coolerFromK, coolerToK }) => ({
    code: 'action.cover',
    params: { about: 'heat', cover, changeK: coolerK, changeFromK: coolerFromK, changeToK: coolerToK, depthCm },
  });
