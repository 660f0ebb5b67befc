import { RequestError } from '../basics/errors.js';
import type { Crop } from './crop.js';
import { crops } from './crops.js';
import { cropsLike } from './crops-like.js';
import { type OwnCrop, ownCrop } from './own-crop.js';

/** A crop by its id, or a curve of the caller's own. */
export type CropChoice = string | OwnCrop;

/** The crop that is meant. @throws {RequestError} `unknown-crop`, with the ids that may be meant. */
export function chosenCrop(choice: CropChoice): Crop {
  if (typeof choice !== 'string') return ownCrop(choice);
  const crop = crops.get(choice);
  if (crop) return crop;
  const like = cropsLike(choice, [...crops.keys()]);
  throw new RequestError(
    'unknown-crop',
    `There is no crop "${choice}" here${like.length > 0 ? `; ${like.join(' or ')} may be meant` : ''}. Choose one of ${[...crops.keys()].join(', ')}, or send rows of your own.`,
    [{ path: ['crop'], detail: 'There is no such crop.' }],
  );
}

/** Is the same crop meant? A curve of the caller's own is the same where all of it is. */
export const isSameCrop = (one: CropChoice, other: CropChoice): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
