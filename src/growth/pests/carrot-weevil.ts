import type { PestRule } from './pest-rule.js';

/**
 * Listronotus oregonensis: the half of the weevils that have left their winter quarters. Blatt and others count 387 °C·d to it in Nova Scotia,
 * where it came at the same warmth as in Quebec, whose sums begin on 1 April; the first came from 35 °C·d on, and eggs from 42.
 */
export const carrotWeevil: PestRule<'carrot-weevil'> = {
  id: 'carrot-weevil',
  crops: ['carrot', 'parsley', 'celery'],
  threatens: 'root',
  broods: [{ baseC: 7, ceilingC: null, since: '04-01', sumCDays: 387 }],
  source:
    'Blatt, Joseph, Cutler, Olson & White 2020, Can. Entomol. 152: 374-388; on which leaves it lays: Augustine Joseph 2017',
};
