import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import { germinationCurve, rateAt } from '../../../src/germination/curve/curve.js';
import { cropCurve } from '../../../src/plot/crop/crop-curve.js';
import type { DrawnCrop } from '../../../src/plot/crop/drawn-crop.js';
import { cornersOf, outsideOf } from './corners.js';
import { say } from './make.js';
import { all, readXml, textIn } from './read-xml.js';

function drawn(crop: DrawnCrop, options = {}) {
  const svg = readXml(cropCurve(crop, { say, ...options }));
  expect(outsideOf(svg)).toEqual([]);
  return svg;
}
const description = (svg: ReturnType<typeof drawn>): string => textIn(all(svg).find(({ name }) => name === 'desc')!);

describe('a crop’s curve', () => {
  it.each([...crops.keys()])('of %s lies in its picture, in both units and widths', (id) => {
    for (const width of [360, 1200]) for (const unit of ['C', 'F']) drawn(crops.get(id)!, { width, unit });
  });

  // Harrington, Minges (1954), as printed in Knott's Handbook, 4th ed. (1997): onion's row; 40 °C was tried in vain.
  it('says each cell: days, percent, and where none came', () => {
    const said = description(drawn(crops.get('onion')!));
    expect(said).toContain(
      'Days until half is up: 136 at 0 °C, 31 at 5 °C, 13 at 10 °C, 7 at 15 °C, 5 at 20 °C, 4 at 25 °C, 4 at 30 °C, 13 at 35 °C.',
    );
    expect(said).toContain('Tested, and nothing came: 40 °C.');
    expect(said).not.toContain('Never tested');
  });

  it('tells tested, tested in vain and never tested apart by their marks', () => {
    const said = description(drawn(crops.get('celery')!));
    expect(said).toContain('Tested, and nothing came: 0 °C, 25 °C, 30 °C, 35 °C.');
    expect(said).toContain('Never tested: 40 °C.');
    const texts = all(drawn(crops.get('celery')!))
      .filter(({ name }) => name === 'text')
      .map(textIn);
    expect(texts).toEqual(expect.arrayContaining(['Tested', 'Tested, and nothing came', 'Never tested']));
  });

  it('follows the curve that the forecast reckons with, between its cells', () => {
    const crop = crops.get('onion')!;
    const curve = germinationCurve(crop.rows, crop.soil!.maximumC);
    const lines = all(drawn(crop, { width: 1200 })).filter(
      ({ name, attributes }) => name === 'path' && attributes.class === 'stroke-accent',
    );
    // From 10 to 15 °C, 13 to 7 days: the third piece. Its height is in the logarithm of the days.
    const corners = cornersOf(lines[2]!.attributes.d!);
    const [[, y0], [, y1]] = [corners[0]!, corners.at(-1)!];
    corners.forEach(([, y], i) => {
      const tempC = 10 + (5 * i) / (corners.length - 1);
      const share = (y - y0) / (y1 - y0);
      expect(Math.exp(Math.log(13) + share * Math.log(7 / 13))).toBeCloseTo(1 / rateAt(curve, tempC), 1);
    });
  });

  it('is drawn of the grower’s own few rows, and of none', () => {
    const own = { id: 'own-rows', name: 'Aunt’s <own>', soil: null, hotThresholdC: 30 };
    drawn({ ...own, rows: [{ temperatureC: 20, tested: true, days: 6, percent: null }] });
    const none = drawn({ ...own, rows: [{ temperatureC: 20, tested: false, days: null, percent: 80 }] });
    expect(description(none)).toContain('No temperature at which it comes up was timed.');
    expect(textIn(all(none).find(({ name }) => name === 'title')!)).toBe('Aunt’s <own>');
  });
});
