import { describe, expect, it } from 'vitest';
import { forecastPlot } from '../../../src/plot/forecast-plot.js';
import type { PictureOptions } from '../../../src/plot/picture.js';
import { cornersOf, outsideOf } from './corners.js';
import { dateAfter, drawnForecast, drawnHours, say } from './make.js';
import { all, readXml, textIn, type XmlElement } from './read-xml.js';

const lettuce = { crop: 'lettuce', bedName: 'North bed', goodC: { from: 4, to: 27 } };
const widths = [360, 1200];

function drawn(forecast = drawnForecast(), setting = {}, options: Partial<PictureOptions> = {}): XmlElement {
  const svg = readXml(forecastPlot(forecast, { ...lettuce, ...setting }, { say, ...options }));
  expect(outsideOf(svg)).toEqual([]);
  return svg;
}
const texts = (svg: XmlElement): string[] =>
  all(svg)
    .filter(({ name }) => name === 'text')
    .map(textIn);
const said = (svg: XmlElement, name: 'title' | 'desc'): string => textIn(all(svg).find((one) => one.name === name)!);
const dashesOf = (svg: XmlElement): (string | undefined)[] =>
  all(svg)
    .filter(
      ({ name, attributes }) =>
        name === 'path' && attributes['stroke-linejoin'] === 'round' && attributes.class === 'stroke-ink',
    )
    .map(({ attributes }) => attributes['stroke-dasharray']);

describe('the forecast in one picture', () => {
  it('is an image with a name and a description, by ids of its own', () => {
    const svg = drawn(undefined, {}, { id: 'north' });
    expect(svg.attributes).toMatchObject({
      role: 'img',
      'aria-labelledby': 'north-title',
      'aria-describedby': 'north-description',
    });
    const ids = all(svg).flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id.startsWith('north-'))).toBe(true);
  });

  it('says in words what it shows: the dates and their ranges, parts, spells, today and the count', () => {
    const svg = drawn(undefined, { today: '2027-05-06' });
    expect(said(svg, 'title')).toBe('Lettuce, sown on 3 May 2027, North bed');
    const description = said(svg, 'desc');
    for (const part of [
      'Half is up about 9 May, between 9 May and 10 May. Of 200 seeds expect 40 to 133 seedlings.',
      'First tenth 7 May, between 7 May and 8 May; in slow beds to 9 May.',
      'Nine tenths 12 May',
      'The temperature at the seed is 10 to 26 °C',
      'The crop likes 4 to 27 °C.',
      'up to 34 °C.',
      'Today is 6 May.',
      'The count is on 24 May.',
    ]) {
      expect(description).toContain(part);
    }
    expect(description.replaceAll(/[\u2009\u202f]/g, ' ')).toMatch(
      /Measured 3 ?– ?8 May. Worked out 9 ?– ?13 May. Expected 14 ?– ?24 May./,
    );
  });

  it.each(widths)('tells measured, worked out and expected hours apart by their lines, %i pixels wide', (width) => {
    const forecast = drawnForecast();
    const svg = drawn(forecast, { hours: drawnHours(forecast) }, { width });
    expect(new Set(dashesOf(svg)).size).toBe(3);
    expect(texts(svg)).toEqual(expect.arrayContaining(['Measured', 'Worked out', 'Expected']));
  });

  it('draws days as bands where hours are not known', () => {
    const svg = drawn();
    const fills = all(svg).flatMap(({ attributes }) => attributes.fill ?? []);
    expect(fills).toEqual(expect.arrayContaining(['url(#plot-modelled)', 'url(#plot-expected)']));
    expect(new Set(dashesOf(svg)).size).toBe(3);
  });

  it('puts a milestone’s dot at its date, and on the curve', () => {
    const svg = drawn(undefined, {}, { width: 1200 });
    // The axis runs from 64 to 1176 over the 22 days from 3 May on; half is on 9 May, drawn at its noon.
    const x = 64 + (1112 * 6.5) / 22;
    const dots = all(svg).filter(
      ({ name, attributes }) => name === 'circle' && Math.abs(Number(attributes.cx) - x) < 0.1,
    );
    expect(dots).toHaveLength(2);
    const curve = all(svg).find(
      ({ attributes }) => attributes.class === 'stroke-accent' && attributes['stroke-width'] === '2.5',
    )!;
    const corners = cornersOf(curve.attributes.d!);
    const after = corners.findIndex(([at]) => at >= x);
    const [[x0, y0], [x1, y1]] = [corners[after - 1]!, corners[after]!];
    expect(Number(dots[0]!.attributes.cy)).toBeCloseTo(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0), 0);
  });

  it('reads in °F, with round numbers on the axis', () => {
    const svg = drawn(undefined, {}, { unit: 'F' });
    const ticks = texts(svg).filter((text) => /^-?\d+°F$/.test(text));
    expect(ticks.length).toBeGreaterThanOrEqual(3);
    expect(ticks.every((text) => Number(text.slice(0, -2)) % 10 === 0)).toBe(true);
    expect(said(svg, 'desc')).toContain('The crop likes 39 to 81 °F.');
    expect(texts(svg).join(' ')).not.toContain('°C');
  });

  it('says why nothing comes up', () => {
    const none = { why: 'not-by-count-day' } as const;
    const late = drawn(drawnForecast({ emergence: { first: none, half: none, most: none } }));
    expect(texts(late).join(' ')).toContain('Nothing is up by the count on 24 May.');
    const never = { why: 'not-at-this-temperature' } as const;
    const cold = drawn(drawnForecast({ emergence: { first: never, half: never, most: never } }));
    expect(said(cold, 'desc')).toContain('Nothing comes up at these temperatures.');
  });

  it('leaves a range open that goes on past the count', () => {
    const { emergence } = drawnForecast();
    if ('why' in emergence.most) throw new Error('it comes');
    const most = { ...emergence.most, range: { from: '2027-05-20', to: null } };
    const svg = drawn(drawnForecast({ emergence: { ...emergence, most } }));
    expect(said(svg, 'desc')).toContain('from 20 May to after the count');
  });

  it('was up, once half is past', () => {
    expect(said(drawn(undefined, { today: '2027-05-20' }), 'desc')).toContain('Half was up about 9 May');
  });

  it.each(widths)('of one day, of none, of a year, across new year, with holes, %i pixels wide', (width) => {
    for (const forecast of [
      drawnForecast({ nDays: 1 }),
      drawnForecast({ daily: [] }),
      drawnForecast({ nDays: 366 }),
      drawnForecast({ sown: '2027-11-20', nDays: 100 }),
      drawnForecast({ daily: drawnForecast().daily.filter((_, day) => day % 4 > 0) }),
      drawnForecast({ daily: drawnForecast().daily.map((day, i) => (i % 5 === 2 ? { ...day, mean: NaN } : day)) }),
    ]) {
      drawn(forecast, { hours: drawnHours(forecast), today: dateAfter(forecast.sowing.date, 3) }, { width });
      drawn(forecast, {}, { width, unit: 'F' });
    }
  });

  it('breaks the line where hours are missing', () => {
    const forecast = drawnForecast({ nDays: 10 });
    const hours = drawnHours(forecast);
    const tempC = Array.from(hours.tempC, (one, hour) => (hour >= 30 && hour < 45 ? NaN : one));
    const lines = (some: typeof hours): number => dashesOf(drawn(forecast, { hours: some })).length;
    expect(lines({ ...hours, tempC })).toBe(lines(hours) + 1);
  });

  it('lets no name become markup', () => {
    const name = '<script>alert("1")</script>&amp;\u0000\ud800 \'x\'';
    const svg = drawn(undefined, { crop: name, bedName: name });
    expect(all(svg).some((one) => one.name === 'script')).toBe(false);
    expect(said(svg, 'title')).toContain('<script>alert("1")</script>&amp; \'x\'');
  });

  it('asks nothing of anywhere, and runs nothing', () => {
    const svg = drawn(undefined, { hours: drawnHours(drawnForecast()) });
    for (const { name, attributes } of all(svg)) {
      expect(['script', 'image', 'foreignObject', 'use', 'a']).not.toContain(name);
      expect(Object.keys(attributes).filter((key) => /^on|href/.test(key))).toEqual([]);
    }
    expect(
      all(svg)
        .filter(({ name }) => name === 'style')
        .map(textIn)
        .join(''),
    ).not.toMatch(/url|@import/);
  });

  it('leaves its style sheet to the page where that is said', () => {
    expect(all(drawn(undefined, {}, { hasStyles: false })).some(({ name }) => name === 'style')).toBe(false);
  });

  it('of a year of hours stays small and is drawn at once', () => {
    const forecast = drawnForecast({ nDays: 366 });
    const hours = drawnHours(forecast);
    for (const width of [360, 1200, 2400]) {
      forecastPlot(forecast, { ...lettuce, hours }, { say, width });
      const runs = Array.from({ length: 15 }, () => {
        const startMs = performance.now();
        const svg = forecastPlot(forecast, { ...lettuce, hours }, { say, width });
        return { ms: performance.now() - startMs, bytes: Buffer.byteLength(svg) };
      });
      expect(runs[0]!.bytes).toBeLessThan(300_000);
      // The quickest: the machine may be busy with others.
      expect(Math.min(...runs.map(({ ms }) => ms))).toBeLessThan(50);
    }
  });
});
