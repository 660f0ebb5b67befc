import type { NewsFact } from './news-facts.js';

/** A message about a bed, or a sowing in it. */
export interface NewsData {
  readonly bed: string;
  readonly sowing?: string;
  /** The crop's id. */
  readonly crop: string;
  /** All of it, for a sentence or two. */
  readonly text: NewsFact;
  readonly [field: string]: unknown;
}

/** News of a subject. */
export interface News {
  /** The state to store as reported, independent of language; null: nothing. */
  readonly mark: string | null;
  /** The message to send; null: none is needed. */
  readonly data: NewsData | null;
}
