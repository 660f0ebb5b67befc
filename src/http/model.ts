import type { Note } from '../basics/errors.js';

/** The model's version changes whenever the same question gets another answer. */
export const model = {
  name: 'cohort-threshold',
  version: '1.0.0',
  sources: [
    "Harrington, Minges (1954), as printed in Knott's Handbook for Vegetable Growers, 4th ed. (1997): days and percent at constant temperature",
    'Brewster (2008), Onions and Other Vegetable Alliums, Eqns 4.6-4.9: thermal time, spread and ceilings within a lot',
    'Parton, Logan (1981), Agric. Meteorol. 23: 205-216: the day between minimum and maximum',
    'Forsythe and others (1995), Ecol. Model. 80: 87-95: day length',
  ],
};

/** What every answer carries beside its own content. */
export function signed<Content extends object>(content: Content, issuedAt: Date) {
  const notes: { assumptions: Note[]; warnings: Note[] } = { assumptions: [], warnings: [] };
  return { ...notes, ...content, model, issuedAt: issuedAt.toISOString() };
}
