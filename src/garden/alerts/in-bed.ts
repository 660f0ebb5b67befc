import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import type { SowingNow } from '../sowing/known-now.js';

/** What every news of a sowing names. */
export const inBed = ({ bed, id }: SowingNow['sowing'], crop: Pick<Crop, 'id'>) => ({ bed, sowing: id, crop: crop.id });

/** The same for its text. */
export const sownInBed = ({ bed, date }: SowingNow['sowing'], crop: Pick<Crop, 'id' | 'name'>) => ({
  crop: cropInFacts(crop),
  bed,
  sownOn: date,
});
