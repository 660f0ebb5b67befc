import type { NewsFact } from './news-facts.js';

/** What somebody is told of a bed, or of a sowing in it. */
export interface NewsData {
  readonly bed: string;
  readonly sowing?: string;
  /** The crop's id. */
  readonly crop: string;
  /** All of it, for a sentence or two. */
  readonly text: NewsFact;
  readonly [field: string]: unknown;
}

/** What is new of a subject. */
export interface News {
  /** What is to be remembered as told, in any words; null: nothing. */
  readonly mark: string | null;
  /** What is to be told; null: nobody needs to hear of it. */
  readonly data: NewsData | null;
}
