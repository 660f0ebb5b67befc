import { describe, expect, it } from 'vitest';
import { thinningOf } from '../../../src/garden/sowing/thinning.js';
import { cropCalled } from '../germination/make.js';
import { on } from './seasons.js';

const up = on('2027-05-14');
const most = { date: up, days: 11, range: { from: up, to: up }, inBeds: { from: up, to: on('2027-06-01') } };

describe('thinning', () => {
  it('has its week ten days after most are up in a slow bed, when true leaves show: common practice', () => {
    expect(thinningOf({ isThinned: true }, most)).toEqual({ from: '2027-06-11', to: '2027-06-17' });
  });

  it('is for rows that are sown thickly, and that come up', () => {
    expect(thinningOf(cropCalled('sweet-corn'), most)).toBeNull();
    expect(thinningOf({ isThinned: true }, { why: 'not-by-count-day' })).toBeNull();
  });
});
