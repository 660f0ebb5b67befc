import { describe, expect, it } from 'vitest';
import type { DrawnSeason } from '../../../src/plot/season.js';
import { seasonStrip } from '../../../src/plot/season-strip.js';
import { outsideOf } from './corners.js';
import { dateAfter, say, southernSeason } from './make.js';
import { all, readXml, textIn } from './read-xml.js';

const setting = { crop: 'lettuce', bedName: 'South bed' };

function drawn(season: DrawnSeason, other = {}, options = {}) {
  const svg = readXml(seasonStrip(season, { ...setting, ...other }, { say, ...options }));
  expect(outsideOf(svg)).toEqual([]);
  return svg;
}
const description = (svg: ReturnType<typeof drawn>): string =>
  textIn(all(svg).find(({ name }) => name === 'desc')!).replaceAll(/[\u2009\u202f]/g, ' ');

describe('the season as a strip', () => {
  it('says when to sow and what is closed and why, across new year', () => {
    const said = description(drawn(southernSeason, { today: '2027-09-20' }));
    expect(said).toMatch(/Sow 1 Sept? – 29 Nov and 30 Jan – 18 Mar; best on 12 September 2027\./);
    expect(said).toContain('It is the surest date.');
    expect(said).toMatch(/Closed, too hot 30 Nov 2027 – 29 Jan 2028\./);
    expect(said).toMatch(/12 years .* 80 %/);
    expect(said).toMatch(/Today is 20 Sept?\./);
  });

  it('tells open from closed days by bars of their own, and the reasons by hatches', () => {
    const svg = drawn(southernSeason, {}, { width: 1200 });
    // The axis runs from 64 to 1176 over 200 days: open are days 0 to 89 and 151 to 199, closed those between.
    const boxes = all(svg).filter(({ name, attributes }) => name === 'rect' && attributes.height === '14');
    const lane = boxes.filter(({ attributes }) => attributes.width !== '26');
    const px = 1112 / 200;
    expect(lane.map(({ attributes }) => [attributes.fill, Number(attributes.x), Number(attributes.width)])).toEqual([
      ['#356b32', 64, expect.closeTo(90 * px, 0)],
      ['#356b32', expect.closeTo(64 + 151 * px, 0), expect.closeTo(49 * px, 0)],
      ['url(#plot-hot)', expect.closeTo(64 + 90 * px, 0), expect.closeTo(61 * px, 0)],
    ]);
  });

  it.each([360, 1200])('of one day, of none, of a usual year, without a window, %i pixels wide', (width) => {
    const { dates } = southernSeason;
    drawn({ ...southernSeason, dates: dates.slice(0, 1) }, { today: '2027-09-01' }, { width });
    drawn({ ...southernSeason, dates: [], windows: [], closed: [], best: null }, {}, { width });
    const usual = drawn(
      { ...southernSeason, dates: dates.map(({ date }) => ({ date, sureness: null })), years: { count: 0 } },
      {},
      { width },
    );
    expect(description(usual)).toContain('one usual year');
    const none = drawn({ ...southernSeason, windows: [], best: null }, {}, { width });
    expect(description(none)).toContain('No date of this season is sure enough.');
  });

  it('names a few of many spells', () => {
    const closed = Array.from({ length: 9 }, (_, i) => ({
      from: dateAfter('2027-09-03', 10 * i),
      to: dateAfter('2027-09-05', 10 * i),
      why: 'too-slow' as const,
    }));
    expect(description(drawn({ ...southernSeason, closed }))).toMatch(/too slow .* and 5 more/);
  });
});
