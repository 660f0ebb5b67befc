import type { PestRule } from './pest-rule.js';

const limits = { baseC: 3.9, ceilingC: 28.9, since: '01-01' } as const;

/** Delia platura: flies of three broods, whose maggots eat sprouting seed. */
export const seedcornMaggot: PestRule<'seedcorn-maggot'> = {
  id: 'seedcorn-maggot',
  crops: [
    'snap-bean',
    'lima-bean',
    'sweet-corn',
    'pea',
    'cucumber',
    'muskmelon',
    'watermelon',
    'onion',
    'bunching-onion',
  ],
  threatens: 'seed',
  broods: [200, 600, 1000].map((sumCDays) => ({ ...limits, sumCDays })),
  source: 'Funderburk, Higley & Pedigo 1984; South Dakota State University and University of Minnesota Extension',
};
