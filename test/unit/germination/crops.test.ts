import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import { thermoinhibitionThreshold } from '../../../src/germination/curve/thermoinhibition-threshold.js';
import { cropCalled } from './make.js';

describe('the crops', () => {
  it("are the handbook's twenty-four, and two that borrow rows: bunching onion onion's, head lettuce lettuce's", () => {
    expect(crops.size).toBe(26);
    expect(cropCalled('bunching-onion').rows).toEqual(cropCalled('onion').rows);
    expect(cropCalled('bunching-onion').cautions.map(({ code }) => code)).toContain('onion-rows-stand-in');
    expect(cropCalled('head-lettuce').rows).toEqual(cropCalled('lettuce').rows);
  });

  it.each([...crops.values()])('$id is called by its own id, rises in temperature and can come up', (crop) => {
    expect(crops.get(crop.id)).toBe(crop);
    const tempsC = crop.rows.map((row) => row.temperatureC);
    expect(tempsC).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40]);
    expect(crop.rows.some((row) => row.days !== null && row.percent !== null && row.percent > 0)).toBe(true);
  });

  it.each([...crops.values()])('$id has limits in their order and a hot threshold that soil can reach', (crop) => {
    const { minimumC, optimumFromC, optimumToC, maximumC } = crop.soil!;
    const limits = [minimumC, optimumFromC, optimumToC, maximumC];
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    expect(crop.hotThresholdC).toBeGreaterThanOrEqual(20);
    expect(crop.hotThresholdC).toBeLessThanOrEqual(41);
  });

  it.each([...crops.values()])(
    '$id has shares from 0 to 1, times no shorter than the chart unless beds were faster, and names its sources',
    (crop) => {
      const span = [0, crop.field.from, crop.field.to, 1];
      expect(span).toEqual(span.toSorted((a, b) => a - b));
      const { bedFactor } = crop.growth!;
      expect(crop.bedTimeFactor.from).toBeLessThanOrEqual(bedFactor);
      expect(crop.bedTimeFactor.to).toBeGreaterThan(bedFactor);
      if (bedFactor === 1) expect(crop.bedTimeFactor.from).toBe(1);
      expect(crop.sigmaLog10).toBeGreaterThanOrEqual(0.05);
      expect(crop.sigmaLog10).toBeLessThanOrEqual(0.2);
      for (const caution of crop.cautions) {
        expect(caution.source).toMatch(/\w{3}/);
      }
    },
  );

  it('take the published maximum for a hot threshold where nobody tested the hot side', () => {
    const untested = [...crops.values()].filter((crop) => thermoinhibitionThreshold(crop.rows) === null);
    expect(untested.map(({ id }) => id).sort()).toEqual([
      'cabbage',
      'eggplant',
      'muskmelon',
      'pea',
      'radish',
      'watermelon',
    ]);
    for (const crop of untested) expect(crop.hotThresholdC).toBe(crop.soil!.maximumC);
  });

  // Leskovar, Esensee, Belefant-Miller (1999), J. Am. Soc. Hort. Sci. 124: 301: spinach is inhibited above 20 °C.
  it("take spinach's hot threshold from a later work, its row being of a weak lot", () => {
    expect(cropCalled('spinach').hotThresholdC).toBe(20);
    expect(thermoinhibitionThreshold(cropCalled('spinach').rows)).toBeLessThan(13);
  });

  it('name the crops whose wet seed chill harms', () => {
    const harmed = [...crops.values()].filter((crop) => crop.chillingSensitive).map(({ id }) => id);
    expect(harmed.sort()).toEqual([
      'cucumber',
      'lima-bean',
      'muskmelon',
      'okra',
      'snap-bean',
      'sweet-corn',
      'watermelon',
    ]);
  });

  // Bralewski, Holubowicz (2008), beds against the laboratory over three years, abstract.
  it.each([
    ['onion', 5, 88],
    ['carrot', 22, 99],
    ['lettuce', 20, 67],
    ['radish', 67, 96],
    ['cabbage', 65, 97],
  ])('say that beds gave %s from %i to %i %% of the laboratory stand', (id, from, to) => {
    const { field } = cropCalled(id);
    expect([100 * field.from, 100 * field.to]).toEqual([expect.closeTo(from, 9), expect.closeTo(to, 9)]);
  });

  // Which crops bolt, and from what: the publications each caution names.
  it.each([
    ['spinach', 'bolts-in-long-days'],
    ['lettuce', 'bolts-in-heat-and-long-days'],
    ['onion', 'bolts-after-cold'],
    ['onion', 'day-length'],
    ['beet', 'bolts-after-cold'],
    ['celery', 'bolts-after-cold'],
    ['carrot', 'bolts-after-cold'],
    ['cabbage', 'bolts-after-cold'],
    ['turnip', 'bolts-after-cold'],
  ])('warn of %s that it %s', (id, code) => {
    expect(cropCalled(id).cautions.map((caution) => caution.code)).toContain(code);
  });

  it('say that autumn slows those sown in late summer for the same year', () => {
    const slowed = [...crops.values()].filter(({ cautions }) => cautions.some(({ code }) => code === 'autumn-slows'));
    expect(slowed.map(({ id }) => id).sort()).toEqual([
      'beet',
      'bunching-onion',
      'carrot',
      'head-lettuce',
      'lettuce',
      'pea',
      'radish',
      'snap-bean',
      'spinach',
      'turnip',
    ]);
    // The caution speaks of days to harvest, so each of them has some, counted from sowing.
    for (const { maturity } of slowed) expect(maturity!.countedFrom).toBe('sowing');
  });

  it('say each caution once to a crop', () => {
    for (const { id, cautions } of crops.values()) {
      expect(new Set(cautions.map(({ code }) => code)).size, id).toBe(cautions.length);
    }
  });
});
