import type { Crop } from '../../germination/crop.js';
import type { SowingNow } from '../sowing/known-now.js';

type SownCrop = Pick<Crop, 'id' | 'name'>;

/** What every news of a sowing names. */
export const inBed = ({ bed, id }: SowingNow['sowing'], crop: SownCrop) => ({ bed, sowing: id, crop: crop.id });

/** A sowing in words: "the lettuce sown on 2027-05-03 in bed north". */
export const sownWords = ({ bed, date }: SowingNow['sowing'], { name }: SownCrop): string =>
  `the ${name.toLowerCase()} sown on ${date} in bed ${bed}`;
