/** Reasons that close a date or make it worse than good. */
export const whyNots = [
  'too-cold',
  'too-hot',
  'too-slow',
  'frost-to-come',
  'too-late',
  'heat-at-harvest',
  'bolts',
  'day-length',
  'ground-wet',
  'over-winter',
] as const;
export type WhyNot = (typeof whyNots)[number];

/** Reasons that close a date, in the few words of pictures; a span's reasons say the rest. */
export const whysClosed = ['too-cold', 'too-hot', 'too-slow', 'frost-to-come', 'too-late'] as const;
export type WhyClosed = (typeof whysClosed)[number];

export const CLOSED_AS: Readonly<Record<WhyNot, WhyClosed>> = {
  'too-cold': 'too-cold',
  'too-hot': 'too-hot',
  'too-slow': 'too-slow',
  'frost-to-come': 'frost-to-come',
  'too-late': 'too-late',
  'heat-at-harvest': 'too-hot',
  bolts: 'too-late',
  'day-length': 'too-late',
  'ground-wet': 'too-cold',
  'over-winter': 'too-late',
};
