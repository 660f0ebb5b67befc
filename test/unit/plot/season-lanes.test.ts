import { describe, expect, it } from 'vitest';
import { type Lane, seasonLanes } from '../../../src/plot/season-lanes.js';
import { outsideOf } from './corners.js';
import { say, southernSeason } from './make.js';
import { all, readXml, textIn } from './read-xml.js';

const setting = { title: 'When to sow', from: '2027-09-01', to: '2028-03-18' };
const lane: Lane = { ...southernSeason, name: 'As it is' };
const none: Lane = { name: 'Lettuce <b>', windows: [], closed: [], best: null };

describe('seasons under one another', () => {
  it.each([360, 1200])('stay within the picture, %i pixels wide', (width) => {
    for (const lanes of [[lane, none], [none], []]) {
      expect(outsideOf(readXml(seasonLanes(lanes, setting, { say, width })))).toEqual([]);
    }
  });

  it('lie day under day, open and closed by different marks', () => {
    const boxes = all(readXml(seasonLanes([lane, none], setting, { say, width: 1200 }))).filter(
      ({ name, attributes }) => name === 'rect' && attributes.height === '18',
    );
    // From 24 to 1176 over 200 days.
    const px = 1152 / 200;
    expect(boxes.map(({ attributes }) => [attributes.fill, Number(attributes.x), Number(attributes.width)])).toEqual([
      ['none', 24, 1152],
      ['#356b32', 24, expect.closeTo(90 * px, 0)],
      ['#356b32', expect.closeTo(24 + 151 * px, 0), expect.closeTo(49 * px, 0)],
      ['url(#plot-hot)', expect.closeTo(24 + 90 * px, 0), expect.closeTo(61 * px, 0)],
      ['none', 24, 1152],
    ]);
  });

  it('say in words what they show', () => {
    const description = all(readXml(seasonLanes([lane, none], setting, { say }))).find(({ name }) => name === 'desc')!;
    expect(textIn(description).replaceAll(/[\u2009\u202f]/g, ' ')).toMatch(
      /As it is: open 1 Sept? – 29 Nov and 30 Jan – 18 Mar, best on 12 September 2027\. Lettuce <b>: no date is sure enough\./,
    );
  });
});
