import { describe, expect, it } from 'vitest';
import type { CheckAnswer } from '../../src/contract/readings.js';
import { catalogues } from '../../src/words/say.js';
import { hourlySeries, post, startApp } from './helper.js';

// What the service says of a file and of a refusal, in the reader's language, degrees and dates, with code and parameters.

const app = await startApp();

const logged = (values: readonly number[], header = 'time,soil 5 cm (C)'): string =>
  `${header}\n${hourlySeries([...values], { start: '2027-05-03T00:00' })
    .readings.map(({ at, value }) => `${at},${value}`)
    .join('\n')}\n`;
const swing = (hours: number): number[] =>
  Array.from({ length: hours }, (_, i) => 14 + Math.round(10 * Math.sin((Math.PI * i) / 12)) / 10);

/** A bed that warms by 12 K from one hour to the next, and stays so. */
const jumping = logged([...swing(48), ...swing(48).map((tempC) => tempC + 12)]);

async function check(file: string, query = '', headers: Record<string, string> = {}): Promise<CheckAnswer> {
  const response = await app.inject({
    method: 'POST',
    url: `/v1/readings/check?timeZone=Etc/GMT%2B2${query}`,
    headers: { 'content-type': 'text/csv', ...headers },
    payload: file,
  });
  expect(response.statusCode, response.body).toBe(200);
  return response.json();
}

describe('a jump of 12 kelvin in a file', () => {
  it.each([
    ['C', 'en', 'comes after a jump of 12 °C'],
    ['F', 'en', 'comes after a jump of 22 °F'],
    ['C', 'de', 'folgt auf einen Sprung von 12 °C'],
    ['F', 'de', 'folgt auf einen Sprung von 22 °F'],
  ])('is told in °%s and %s as: %s', async (textUnit, lang, why) => {
    const { doubtful } = await check(jumping, `&textUnit=${textUnit}&lang=${lang}`);
    expect(doubtful).toMatchObject([{ line: 50, why, code: 'row.jump', params: { jumpK: 12, bound: 'exactly' } }]);
    expect(doubtful![0]!.valueC).toBeCloseTo(26, 0);
  });

  it('is told in the language of the header, where the query names none', async () => {
    const { doubtful } = await check(jumping, '', { 'accept-language': 'fr, de-AT;q=0.8' });
    expect(doubtful![0]!.why).toBe('folgt auf einen Sprung von 12 °C');
  });
});

describe('what is asked about a file', () => {
  it('has a code and parameters for each sentence, and is worded for the reader', async () => {
    const unitless = logged(
      swing(48).map((tempC) => Math.round(18 * tempC + 320) / 10),
      'time,soil',
    );
    const response = await post(app, '/v1/readings/check?timeZone=Etc/GMT%2B2&medium=soil&lang=de', unitless);
    expect(response.headers['content-language']).toBe('de');
    expect(response.headers.vary).toContain('Accept-Language');
    const problem = response.json();
    expect(problem).toMatchObject({
      title: 'Welche Einheit?',
      code: 'choose-unit',
      messages: ['choose-unit.unsaid', 'choose-unit.send'],
      params: { column: 'soil' },
      errors: [{ parameter: 'unit', code: 'choose-unit.unsaid', params: { column: 'soil' } }],
    });
    expect(problem.detail).toBe('Die Datei sagt nicht, ob die Spalte „soil“ in °C, °F oder K ist. Senden Sie unit=F.');
    expect(problem.errors[0].choices).toMatchObject([
      {
        value: 'F',
        code: 'choose-unit.choice',
        params: { unit: 'F', minC: 13, meanC: 14, maxC: 15 },
        reads: 'Grad Fahrenheit',
        consequence: 'Minimum 13 °C, Mittel 14 °C, Maximum 15 °C',
      },
    ]);
  });
});

describe('a refusal', () => {
  it('goes on from the name of a field in either language, and says what was sent', async () => {
    const asked = { crop: 'lettuce', sowing: { date: '2027-05-03' }, countDays: 'soon', temperatures: [] };
    const faults = async (lang: string) => (await post(app, `/v1/forecasts?lang=${lang}`, asked)).json();
    const [english, german] = [await faults('en'), await faults('de')];
    expect(english.errors[0]).toEqual({
      pointer: '#/countDays',
      detail: 'must be a number; it was "soon"',
      code: 'field.wrong-kind',
      params: { expected: 'number', orExpected: 'nothing', was: '"soon"', wasKind: 'value' },
    });
    expect(german.errors[0]).toEqual({ ...english.errors[0], detail: 'muss eine Zahl sein; gesendet wurde "soon"' });
    expect(english.detail).toMatch(/^countDays must be a number; it was "soon"\./);
    expect(german.detail).toMatch(/^countDays muss eine Zahl sein; gesendet wurde "soon"\./);
  });

  it('before the query is read is worded as the query says, too', async () => {
    const hosted = await startApp({ hosts: ['quillmere.example'] });
    const response = await hosted.inject({ url: '/v1/crops?lang=de', headers: { host: 'elsewhere.example' } });
    expect(response.json()).toMatchObject({ code: 'misdirected', params: { host: 'elsewhere.example' } });
    expect(response.json().detail).toContain('Dieser Dienst antwortet nicht für den Host "elsewhere.example"');
    expect(response.headers['content-language']).toBe('de');
  });

  it('names only messages that the catalogue has', async () => {
    const { messages } = (await app.inject('/v1/messages?lang=en')).json();
    expect(messages).toHaveProperty(['row.jump']);
    expect(Object.keys(messages).sort()).toEqual(Object.keys(catalogues.de).sort());
  });

  it('has a page of its own in both languages', async () => {
    for (const [lang, heading] of [
      ['en', 'What to do'],
      ['de', 'Was tun'],
    ]) {
      const page = await app.inject({ url: '/problems/choose-unit', headers: { 'accept-language': lang! } });
      expect(page.body).toContain(`<html lang="${lang}">`);
      expect(page.body).toContain(heading);
      expect(page.headers.vary).toContain('Accept-Language');
      expect(page.headers['content-language']).toBe(lang);
    }
  });
});
