import type { PestRule } from './pest-rule.js';

const limits = { baseC: 4.4, ceilingC: null, since: '01-01' } as const;

/** Delia antiqua: onion flies. */
export const onionMaggot: PestRule<'onion-maggot'> = {
  id: 'onion-maggot',
  crops: ['onion', 'bunching-onion'],
  threatens: 'seedling',
  broods: [378, 1083, 1794].map((sumCDays) => ({ ...limits, sumCDays })),
  source: 'University of Wisconsin Extension, XHT1087',
};
