import type { DateWords } from './dates.js';
import type { Sheet } from './picture.js';
import type { LinearScale } from './shapes.js';

/** Shared by all parts of a picture over dates. */
export interface Frame {
  readonly sheet: Sheet;
  readonly words: DateWords;
  readonly x: LinearScale;
}
