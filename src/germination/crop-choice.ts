import { RequestError } from '../basics/errors.js';
import { type FactKinds, factsOf } from '../basics/fact.js';
import type { Crop } from './crop.js';
import { crops } from './crops.js';
import { cropsLike } from './crops-like.js';
import { type CustomCrop, customCrop } from './custom-crop.js';

export const cropRefusalFacts = {
  'unknown-crop': { id: 'text', alike: 'anyOf?', ids: 'text' },
  'unknown-crop.field': {},
} as const satisfies FactKinds;
export const cropRefusal = factsOf(cropRefusalFacts);

/** A crop by its id, or a curve of the caller's own. */
export type CropChoice = string | CustomCrop;

/** The crop that is meant. @throws {RequestError} `unknown-crop`, with the ids that may be meant. */
export function chosenCrop(choice: CropChoice): Crop {
  if (typeof choice !== 'string') return customCrop(choice);
  const crop = crops.get(choice);
  if (crop) return crop;
  const like = cropsLike(choice, [...crops.keys()]);
  throw new RequestError(
    'unknown-crop',
    cropRefusal('unknown-crop', {
      id: choice,
      alike: like.join(', ') || null,
      ids: [...crops.keys()].join(', '),
    }),
    [{ path: ['crop'], detail: cropRefusal('unknown-crop.field') }],
  );
}

/** Is the same crop meant? A curve of the caller's own is the same where all of it is. */
export const isSameCrop = (one: CropChoice, other: CropChoice): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
