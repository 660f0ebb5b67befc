import { describe, expect, it } from 'vitest';
import { hotRemedies, type SpellSetting } from '../../../src/answers/forecast/remedies/remedies.js';
import type { Spell } from '../../../src/germination/run/spells.js';

/** A day whose hours rise in steps of a kelvin over a threshold of 25 °C: 26, 27, … 33 °C. */
const hourlyC = Float64Array.from({ length: 8 }, (_, hour) => 26 + hour);
const spell: Spell = {
  fromH: 0,
  toH: 8,
  days: 1,
  hours: 8,
  peakC: 33,
  thresholdC: 25,
  severity: 'mild',
  delayDays: null,
  standAtRiskPoints: 0,
  hoursInFirstDay: 8,
};
const setting: SpellSetting = {
  hourlyC,
  dayOfHour: new Int32Array(8),
  sowingTime: '12:00',
  eveningH: -1,
  freeDate: null,
  lastDate: '2027-09-01' as SpellSetting['lastDate'],
  bearsMoving: false,
  bedChanges: [
    {
      action: 'shade',
      textOf: (cooler) => ({ code: 'action.shade', params: cooler }),
      warmerK: new Float64Array(8).fill(-4),
    },
  ],
};

describe('shade against heat', () => {
  // What a model of the bed gives was compared with few beds: half of it, and half as much again, are both likely.
  it('of 4 K is worth 2 to 6 K, and spares the hours that lie so little over the threshold', () => {
    const [shade] = hotRemedies(spell, setting);
    expect(shade!.coolerC).toEqual({ from: 2, to: 6 });
    expect(shade!.hotHoursAvoided).toEqual({ from: 2, to: 6 });
  });
});
