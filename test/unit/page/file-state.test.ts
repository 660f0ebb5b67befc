import { describe, expect, it } from 'vitest';
import type { ReportWire } from '../../../src/contract/readings.js';
import { FILE_LIMIT_BYTES } from '../../../src/contract/request/file-limit.js';
import { questionFrom } from '../../../src/page/form/question.js';
import type { Inventory } from '../../../src/page/shell/inventory.js';
import { checkRequest, sizeText, tooLarge } from '../../../src/page/sowing/file-check.js';
import { chooseAgain, fileState } from '../../../src/page/sowing/file-state.js';
import { understoodNote } from '../../../src/page/sowing/understood-words.js';
import { english, readerIn } from './readers.js';

const reader = english;
const text = ({ markup }: { markup: string }): string =>
  markup
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/ ([,;.])/g, '$1')
    .trim();

const report: ReportWire = {
  medium: 'soil',
  probeDepthCm: 5,
  unit: 'F',
  timeZone: 'Etc/GMT+2',
  column: 3,
  columns: [
    { index: 1, name: 'time', looksLike: 'time' },
    { index: 3, name: 'bed <b>', looksLike: 'temperature' },
  ],
  dateOrder: 'dmy',
  clock: 'standard',
  stepMinutes: 30,
  rows: 338,
  used: 336,
  from: '2027-05-03T00:00:00-02:00',
  to: '2027-05-10T23:30:00-02:00',
  min: 10,
  mean: 12,
  max: 15,
  dropped: [
    { line: 7, value: '-999', why: 'is a mark for "no value"' },
    { line: 9, value: 'x', why: 'is no number' },
  ],
  droppedCount: 2,
  gaps: [{ from: '2027-05-04T00:00:00-02:00', to: '2027-05-04T03:00:00-02:00', hours: 3 }],
  series: { medium: 'soil', probeDepthCm: 5, unit: 'C', daily: [] },
};
const file = { name: '<i>.csv', body: new Uint8Array(), bytes: 3000, isKept: true };

describe('what was understood of a file', () => {
  it('is a sentence: which thermometer, column, degrees, step, days; and what was left out, and why', () => {
    const said = text(understoodNote(report, reader));
    expect(said).toMatch(
      /^Soil 5 cm deep, column 3, “bed &lt;b&gt;”, in °F, every 30 minutes, dates with the day first, its clock on standard time all year; 3 ?– ?10 May 2027 in the time zone Etc\/GMT\+2; 336 readings of 338 rows between 10 °C and 15 °C\. 1 gap, the longest of 3 hours\. 2 readings left out: why/,
    );
    expect(said).toContain('Line 7, “-999”: is a mark for &quot;no value&quot;');
  });

  it('is in the degrees and the language of who reads it', () => {
    const said = text(understoodNote({ ...report, min: 10.25 }, readerIn('de', 'F')));
    expect(said).toMatch(/3\. ?– ?10\. Mai 2027/);
    expect(said).toMatch(/^Boden in 5 cm Tiefe, Spalte 3, „bed &lt;b&gt;“, in °F, alle 30 Minuten/);
    expect(said).toContain('zwischen 50,5 °F und 59 °F');
  });

  it('says less where less is known', () => {
    const { column: _, columns: __, probeDepthCm: ___, dateOrder: ____, ...rest } = report;
    const bare = { ...rest, stepMinutes: 1440, from: null, to: null, min: null, max: null, gaps: [], droppedCount: 0 };
    expect(text(understoodNote({ ...bare, clock: 'local', rows: 336 }, reader))).toBe(
      'Soil at the seed, in °F, by the day; 336 readings.',
    );
  });
});

describe('a file beside its field', () => {
  it('is named as text, with its size, and can be taken away', () => {
    const { markup } = fileState(file, { value: report }, reader);
    expect(markup).toContain('&lt;i&gt;.csv</bdi>, 3 KB');
    expect(markup).toContain('id="take-away"');
    expect(markup).not.toContain('after a reload');
  });

  it('that no browser keeps, or no plain page holds, is said to need choosing again', () => {
    expect(text(fileState({ ...file, isKept: false }, null, reader))).toMatch(
      /Reading it … .*after a reload it has to be chosen/,
    );
    expect(text(chooseAgain(file, reader) || { markup: '' })).toContain('Choose it again');
    expect(chooseAgain({ ...file, text: 'time,soil' }, reader)).toBe(false);
  });

  it('is too large in words', () => {
    expect(tooLarge(FILE_LIMIT_BYTES + 2 ** 20, reader).detail).toContain(
      'The file has 257 MB; up to 256 MB can be sent',
    );
    expect([0, 900, 2 ** 20, 1.55 * 2 ** 20, 30 * 2 ** 20].map((bytes) => sizeText(bytes, reader))).toEqual([
      '1 KB',
      '1 KB',
      '1 MB',
      '1.6 MB',
      '30 MB',
    ]);
  });
});

describe('the question what a file says', () => {
  const shelf = {
    crops: [],
    beds: [{ id: 'north', place: 'quillmere' }],
    places: [{ id: 'quillmere', timeZone: 'Etc/GMT+2' }],
    nowMs: 0,
  } as unknown as Inventory;
  const pathOf = (said: string): string =>
    checkRequest(questionFrom(new URLSearchParams(said), shelf), shelf, file).path;

  it("is asked by the clock of the kept bed's place, else of the zone that is written", () => {
    expect(pathOf('bed=north&timeZone=Asia/Tokyo')).toBe('/v1/readings/check?timeZone=Etc%2FGMT%2B2');
    expect(pathOf('bed=&timeZone=Asia/Tokyo')).toBe('/v1/readings/check?timeZone=Asia%2FTokyo');
  });

  it('says how to read it, and nothing of the sowing', () => {
    expect(pathOf('bed=north&unit=F&dateOrder=dmy&crop=carrot&seeds=12')).toBe(
      '/v1/readings/check?unit=F&dateOrder=dmy&timeZone=Etc%2FGMT%2B2',
    );
  });
});
