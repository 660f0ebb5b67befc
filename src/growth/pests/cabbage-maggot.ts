import type { PestRule } from './pest-rule.js';

const limits = { baseC: 6.1, ceilingC: null, since: '01-01' } as const;

/** Delia radicum: root flies of cabbages and their kin. */
export const cabbageMaggot: PestRule<'cabbage-maggot'> = {
  id: 'cabbage-maggot',
  crops: ['cabbage', 'cauliflower', 'radish', 'turnip'],
  threatens: 'root',
  broods: [167, 820, 1473].map((sumCDays) => ({ ...limits, sumCDays })),
  source: 'Eckenrode & Chapman 1972; University of Wisconsin Extension, XHT1087',
};
