import type { WhyClosed } from '../../plot/season-strip.js';

/** Why days are closed to sowing. */
export const WHY_WORDS: Readonly<Record<WhyClosed, string>> = {
  'too-cold': 'too cold',
  'too-hot': 'too hot',
  'too-slow': 'too slow',
  'frost-to-come': 'frost to come',
};
