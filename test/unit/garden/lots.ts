import type { LotFields } from '../../../src/garden/store/season-store.js';

/** A lot of onion of which nothing is known but what is named. */
export const lotOf = (fields: Partial<LotFields> = {}): LotFields => ({
  crop: 'onion',
  germinationPercent: null,
  test: null,
  testedOn: null,
  packedYear: null,
  moisturePercent: null,
  storeC: null,
  hotLimitShiftC: 0,
  ...fields,
});
