import type { PestRule } from './pest-rule.js';

/** Psila rosae: two flights, whose first adults come out at these sums. */
export const carrotRustFly: PestRule<'carrot-rust-fly'> = {
  id: 'carrot-rust-fly',
  crops: ['carrot', 'parsnip', 'parsley', 'celery'],
  threatens: 'root',
  broods: [
    { baseC: 5, ceilingC: null, since: '04-01', sumCDays: 236 },
    { baseC: 5, ceilingC: 20, since: '03-01', sumCDays: 1050 },
  ],
  source:
    'Stevenson & Boyce 1983: Holland Marsh, Ontario, 1972 to 1980, within 1 to 1.8 days; that late sowing does not lower harm by the second flight: Boivin 1987',
};
