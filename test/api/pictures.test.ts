import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CropAnswer } from '../../src/contract/crop.js';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { cropCurve } from '../../src/plot/crop/crop-curve.js';
import { forecastPlot } from '../../src/plot/forecast-plot.js';
import { seasonStrip } from '../../src/plot/season-strip.js';
import { outsideOf } from '../unit/plot/corners.js';
import { say } from '../unit/plot/make.js';
import { all, readXml, textIn, type XmlElement } from '../unit/plot/read-xml.js';
import { keepQuillmere, startApp } from './helper.js';

const SVG = 'image/svg+xml';
const links = {
  forecast: '/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03&seeds=200',
  'windows of a bed': '/v1/beds/north/sowing-windows?crop=lettuce&from=2027-08-03&to=2027-11-30',
  'windows of a place': '/v1/places/quillmere/sowing-windows?crop=lettuce&from=2027-08-03&to=2027-11-30',
  crop: '/v1/crops/celery?precision=rounded',
};

describe.each(Object.entries(links))('the picture of a %s', (_, url) => {
  let app: Awaited<ReturnType<typeof startApp>>;
  const get = (query = '', headers: Record<string, string> = {}) => app.inject({ url: url + query, headers });

  beforeAll(async () => {
    app = await startApp();
    await keepQuillmere(app);
  });
  afterAll(() => app.close());

  it('comes to whoever likes SVG best, and is well-formed', async () => {
    const response = await get('', { accept: 'image/svg+xml, application/json;q=0.5' });
    expect(response.statusCode, response.body).toBe(200);
    expect(response.headers['content-type']).toMatch(/^image\/svg\+xml/);
    expect(response.headers['content-security-policy']).toContain("default-src 'none'");
    expect(readXml(response.body).attributes).toMatchObject({ role: 'img', width: '800' });
  });

  it('leaves JSON to everyone else', async () => {
    for (const headers of [
      {},
      { accept: '*/*' },
      { accept: 'application/json, image/svg+xml' },
      { accept: 'text/html, */*;q=0.8' },
    ]) {
      const response = await get('', headers as Record<string, string>);
      expect(response.headers['content-type']).toMatch(/^application\/json/);
      expect(response.json()).toHaveProperty('model');
    }
  });

  it('has a tag of its own, which says when it has not changed', async () => {
    const [picture, json] = await Promise.all([get('', { accept: SVG }), get()]);
    expect(picture.headers.etag).not.toBe(json.headers.etag);
    expect([picture.headers.vary, json.headers.vary]).toEqual([
      'Accept, Accept-Encoding, Accept-Language',
      'Accept, Accept-Encoding, Accept-Language',
    ]);
    const again = await get('', { accept: SVG, 'if-none-match': String(picture.headers.etag) });
    expect([again.statusCode, again.body, again.headers.vary]).toEqual([
      304,
      '',
      'Accept, Accept-Encoding, Accept-Language',
    ]);
    const other = await get('', { 'if-none-match': String(picture.headers.etag) });
    expect([other.statusCode, other.headers.etag]).toEqual([200, json.headers.etag]);
  });

  it('is as wide as asked, in the degrees asked for, under another tag', async () => {
    const [usual, asked] = await Promise.all([get('', { accept: SVG }), get('&width=360&unit=F', { accept: SVG })]);
    expect(asked.headers.etag).not.toBe(usual.headers.etag);
    const svg = readXml(asked.body);
    expect(svg.attributes.width).toBe('360');
    expect(textIn(svg)).not.toContain('°C');
  });

  it('speaks German, and has the degrees of the texts, where the reader asks for them', async () => {
    const [english, german] = await Promise.all([
      get('', { accept: SVG }),
      get('&lang=de&textUnit=F', { accept: SVG }),
    ]);
    expect(german.headers).toMatchObject({ 'content-language': 'de' });
    expect(german.headers.etag).not.toBe(english.headers.etag);
    const said = (response: typeof german, name: string): string =>
      textIn(all(readXml(response.body)).find((one) => one.name === name)!);
    expect(said(english, 'title')).toMatch(/^(Lettuce, sown on 3 August 2027|When to sow lettuce|Celery )/);
    expect(said(german, 'title')).toMatch(
      /^(Pflücksalat, gesät am 3. August 2027|Wann säen: Pflücksalat|Stangensellerie )/,
    );
    expect(said(german, 'desc')).not.toMatch(/°C|\b(the|sown|best|tested|laboratory)\b/);
    const inCelsius = await get('&textUnit=F&unit=C', { accept: SVG });
    expect(textIn(readXml(inCelsius.body))).not.toContain('°F');
  });

  it('is refused where its width or unit cannot be, whichever form is asked for', async () => {
    for (const accept of [SVG, 'application/json']) {
      for (const [query, parameter] of [
        ['&width=10', 'width'],
        ['&width=wide', 'width'],
        ['&width=99999', 'width'],
        ['&width=400&width=500', 'width'],
        ['&unit=K', 'unit'],
      ] as const) {
        const response = await get(query, { accept });
        expect(response.statusCode, query).toBe(422);
        expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
        expect(response.json().errors).toEqual([expect.objectContaining({ parameter })]);
      }
    }
  });

  it('is all there is beside JSON', async () => {
    const response = await get('', { accept: 'text/html, image/png' });
    expect(response.statusCode).toBe(406);
    expect(response.json()).toMatchObject({ code: 'not-acceptable' });
    expect(response.json().detail).toContain('application/json or image/svg+xml');
  });
});

describe('pictures of what is kept', () => {
  let app: Awaited<ReturnType<typeof startApp>>;
  beforeAll(async () => {
    app = await startApp();
    await keepQuillmere(app);
  });
  afterAll(() => app.close());
  const picture = async (url: string): Promise<XmlElement> =>
    readXml((await app.inject({ url, headers: { accept: SVG } })).body);

  it('say the dates that the JSON says', async () => {
    const json = (await app.inject(links.forecast)).json();
    const desc = textIn(all(await picture(links.forecast)).find(({ name }) => name === 'desc')!);
    const short = (date: string): string =>
      new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' }).format(new Date(date));
    for (const [event, name] of [
      ['first', 'First tenth'],
      ['half', 'Half'],
      ['most', 'Nine tenths'],
    ] as const) {
      expect(desc).toContain(`${name} ${short(json.emergence[event].date)}`);
    }
    expect(desc).toContain(`The count is on ${short(json.stand.by)}.`);
  });

  it('draw a forecast by the hour, and leave the hours out of the JSON', async () => {
    const svg = await picture(`${links.forecast}&width=1200`);
    const lines = all(svg).filter(
      ({ attributes }) => attributes.class === 'stroke-ink' && attributes['stroke-linejoin'] === 'round',
    );
    const corners = lines.reduce((sum, { attributes }) => sum + attributes.d!.split('L').length, 0);
    const { daily, ...json } = (await app.inject(links.forecast)).json();
    expect(corners).toBeGreaterThan(20 * daily.length);
    expect(json).not.toHaveProperty('hours');
  });

  it('can be drawn from the JSON alone, without its hours', async () => {
    const json = (await app.inject(links.forecast)).json<ForecastAnswer>();
    const windows = (await app.inject(links['windows of a bed'])).json<WindowAnswer>();
    const crop = (await app.inject('/v1/crops/lettuce')).json<CropAnswer>();
    const { optimumFromC: from, optimumToC: to } = crop.soil;
    const drawn = [
      forecastPlot(json, { crop: crop.id, goodC: { from, to } }, { say }),
      seasonStrip(windows, { crop: crop.id }, { say }),
      cropCurve(crop, { say }),
    ];
    for (const svg of drawn) expect(outsideOf(readXml(svg))).toEqual([]);
  });

  it('let no bed’s name become markup', async () => {
    const name = '</text><script>alert(1)</script>';
    const { statusCode } = await app.inject({ method: 'PATCH', url: '/v1/beds/north', payload: { name } });
    expect(statusCode).toBe(200);
    const svg = await picture(links.forecast);
    expect(all(svg).map((one) => one.name)).not.toContain('script');
    expect(textIn(all(svg).find((one) => one.name === 'title')!)).toContain(name);
  });

  it('are in the contract as a second form of the answer', async () => {
    const { paths } = (await app.inject('/openapi.json')).json();
    for (const path of [
      '/v1/beds/{id}/forecast',
      '/v1/beds/{id}/sowing-windows',
      '/v1/places/{id}/sowing-windows',
      '/v1/crops/{id}',
    ]) {
      const { responses, parameters } = paths[path].get;
      expect(Object.keys(responses[200].content)).toEqual(['application/json', SVG]);
      expect(parameters.map(({ name }: { name: string }) => name)).toEqual(expect.arrayContaining(['width', 'unit']));
    }
  });

  it('wait for the same refusals as JSON does', async () => {
    const response = await app.inject({ url: '/v1/crops/moonflower', headers: { accept: SVG } });
    expect(response.statusCode).toBe(404);
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
  });
});
