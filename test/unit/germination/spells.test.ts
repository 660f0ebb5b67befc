import { describe, expect, it } from 'vitest';
import type { Crop } from '../../../src/germination/crop.js';
import { coldSpells, hotSpells } from '../../../src/germination/run/spells.js';
import { cropCalled, days, hourly, type Part, sow } from './make.js';

const hours = (n: number, meanC: number): Part => ({ hours: n, meanC });
const lettuce = cropCalled('lettuce');
const snapBean = cropCalled('snap-bean');

function hotOf(crop: Crop, ...parts: Part[]) {
  const { sowing, run, outcome } = sow(crop, hourly(...parts), 60);
  return { outcome, spells: hotSpells(sowing, run, outcome) };
}
function coldOf(crop: Crop, ...parts: Part[]) {
  const { sowing, run, outcome } = sow(crop, hourly(...parts), 60);
  return { outcome, spells: coldSpells(sowing, run, outcome) };
}

describe('a hot spell', () => {
  it('of two days at 35 °C holds lettuce up and puts all of it at risk', () => {
    const { spells, outcome } = hotOf(lettuce, days(1, 20), days(2, 35), days(60, 20));
    expect(spells).toHaveLength(1);
    expect(spells[0]).toMatchObject({
      fromH: 24,
      toH: 72,
      days: 2,
      hours: 48,
      peakC: 35,
      severity: 'severe',
      hoursInFirstDay: 0,
    });
    expect(spells[0]!.thresholdC).toBeCloseTo(25.569, 3);
    expect(outcome.halfH! / 24).toBeCloseTo(4.99, 2);
    expect(spells[0]!.standAtRiskPoints).toBeCloseTo(99, 9);
    // Cut off at the threshold the two days would have been quicker than days at 20 °C, so more than two are lost.
    expect(spells[0]!.delayDays!.half).toBeGreaterThan(2);
    expect(spells[0]!.delayDays!.half).toBeLessThan(3);
  });

  it('of half a day only delays it, and is mild', () => {
    const { spells, outcome } = hotOf(lettuce, days(1, 20), hours(12, 35), days(60, 20));
    expect(spells).toHaveLength(1);
    expect(spells[0]).toMatchObject({ fromH: 24, toH: 36, days: 1, hours: 12, standAtRiskPoints: 0 });
    expect(outcome.halfH! / 24).toBeCloseTo(3.49, 2);
    expect(outcome.ifHeldAreLostPercent).toBeCloseTo(99, 9);
  });

  it('is mild where no day is hot on the whole, severe where one is', () => {
    const severityAt = (hotC: number, coolC: number) =>
      hotOf(lettuce, days(1, 15), hours(12, coolC), hours(12, hotC), days(60, 15)).spells.map(
        (spell) => spell.severity,
      );
    expect(severityAt(30, 20)).toEqual(['mild']);
    expect(severityAt(35, 20)).toEqual(['severe']);
  });

  it('is not severe for the mean of a day of which too little lies after wetting', () => {
    const severityWhenWetAt = (hourOfDay: number) => {
      const { sowing, run, outcome } = sow(lettuce, hourly(hours(17, 27), days(60, 12)), 60, {}, hourOfDay);
      return hotSpells(sowing, run, outcome).map(({ severity }) => severity);
    };
    expect(severityWhenWetAt(7)).toEqual(['mild']);
    expect(severityWhenWetAt(6)).toEqual(['severe']);
  });

  it('of afternoon after afternoon is severe once some are at risk, though no day is hot on the whole', () => {
    const severityOver = (n: number) => {
      const { outcome, spells } = hotOf(lettuce, days(n, 22, 10), days(60, 15));
      return [spells.map(({ severity }) => severity), outcome.ifHeldAreLostPercent < outcome.laboratoryPercent];
    };
    expect(severityOver(1)).toEqual([['mild'], false]);
    expect(severityOver(10)).toEqual([['severe'], true]);
  });

  it('is judged by its own hours, not by those of a worse one before it', () => {
    const { spells } = hotOf(lettuce, hours(30, 35), hours(30, 10), hours(8, 30), days(60, 10));
    expect(spells.map(({ severity }) => severity)).toEqual(['severe', 'mild']);
  });

  it('of three half days is three half days and not one long one', () => {
    const halfDay = [hours(12, 27), hours(12, 12)];
    const { spells } = hotOf(lettuce, ...halfDay, ...halfDay, ...halfDay, days(60, 12));
    expect(spells.map(({ hours, severity }) => [hours, severity])).toEqual([[36, 'mild']]);
  });

  it('of a day without relief is severe, though none is at risk', () => {
    const { spells } = hotOf(lettuce, days(1, 15), hours(12, 5), hours(24, 27), hours(12, 5), days(60, 15));
    expect(spells.map(({ severity, standAtRiskPoints }) => [severity, standAtRiskPoints])).toEqual([['severe', 0]]);
  });

  it('needs six hot hours on one day', () => {
    const spellsOf = (n: number) => hotOf(lettuce, hours(n, 30), hours(24 - n, 10), days(60, 15)).spells.length;
    expect([5, 6].map(spellsOf)).toEqual([0, 1]);
    expect(hotOf(lettuce, hours(19, 10), hours(10, 30), days(60, 10)).spells).toEqual([]);
  });

  it('joins afternoons less than a day apart, and not those further apart', () => {
    const afternoons = (gap: number) => hotOf(lettuce, hours(8, 30), hours(gap, 8), hours(8, 30), days(60, 8)).spells;
    expect(afternoons(23).map(({ fromH, toH, hours }) => [fromH, toH, hours])).toEqual([[0, 39, 16]]);
    expect(afternoons(24).map(({ fromH, toH, hours }) => [fromH, toH, hours])).toEqual([
      [0, 8, 8],
      [32, 40, 8],
    ]);
  });

  it('tells the hours of the first day, when seed is most easily stopped', () => {
    const { spells } = hotOf(lettuce, hours(14, 15), hours(8, 31), hours(14, 15), hours(8, 31), days(60, 15));
    expect(spells.map(({ days, hours, hoursInFirstDay }) => [days, hours, hoursInFirstDay])).toEqual([[2, 16, 8]]);
  });

  it('is none of the seed’s business once most is up', () => {
    expect(hotOf(lettuce, days(10, 20), days(3, 40)).spells).toEqual([]);
  });

  it('tells no delay where nothing comes up at all', () => {
    const { spells } = hotOf(lettuce, days(60, 36));
    expect(spells).toHaveLength(1);
    expect(spells[0]!.delayDays).toBeNull();
    expect(spells[0]!.hours).toBe(60 * 24);
  });

  it('needs hotter hours for a lot that bears more heat', () => {
    const hourlyC = hourly(days(1, 20), hours(12, 30), days(60, 20));
    const spellsWith = (hotLimitShiftC: number) => {
      const { sowing, run, outcome } = sow(lettuce, hourlyC, 60, { hotLimitShiftC });
      return hotSpells(sowing, run, outcome).length;
    };
    expect([0, 4, 5].map(spellsWith)).toEqual([1, 1, 0]);
  });
});

describe('a cold spell', () => {
  it('of a month under snap bean is one, severe, and costs what is lost in the first day', () => {
    const { spells } = coldOf(snapBean, days(30, 7, 1.5), days(30, 18, 5));
    expect(spells).toHaveLength(1);
    expect(spells[0]).toMatchObject({
      fromH: 0,
      toH: 720,
      days: 30,
      hours: 720,
      severity: 'severe',
      thresholdC: 10,
      hoursInFirstDay: 24,
    });
    expect(spells[0]!.peakC).toBeCloseTo(5.5, 1);
    // About half of the first day lies under 7 °C.
    expect(spells[0]!.standAtRiskPoints).toBeGreaterThan(9);
    expect(spells[0]!.standAtRiskPoints).toBeLessThan(18);
  });

  it('of one cold night delays snap bean and costs nothing', () => {
    const { spells } = coldOf(snapBean, days(1, 20), hours(8, 8), days(58, 20));
    expect(
      spells.map(({ severity, hours, peakC, standAtRiskPoints }) => [severity, hours, peakC, standAtRiskPoints]),
    ).toEqual([['mild', 8, 8, 0]]);
  });

  it.each(['tomato', 'onion', 'lettuce', 'pea'])('is never told of %s, which chill does not harm', (id) => {
    expect(coldOf(cropCalled(id), days(30, 4, 2), days(30, 18, 5)).spells).toEqual([]);
  });
});
