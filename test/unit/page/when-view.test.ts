import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ForecastAnswer } from '../../../src/contract/forecast.js';
import type { WindowAnswer } from '../../../src/contract/windows.js';
import { linkTo, questionFrom } from '../../../src/page/form/question.js';
import type { Send } from '../../../src/page/shell/api.js';
import { html } from '../../../src/page/shell/html.js';
import type { AnsweredView } from '../../../src/page/shell/view.js';
import { whenView } from '../../../src/page/when/when-view.js';
import { startApp } from '../../api/helper.js';
import { askedOf, keepDemo, seen, sendTo } from './when-made.js';

let app: FastifyInstance;
let send: Send;
beforeAll(async () => {
  app = await startApp();
  send = sendTo(app);
  await keepDemo(send);
}, 60_000);
afterAll(() => app.close());

const answerTo = async (query: string): Promise<AnsweredView> => (await whenView.answer(await askedOf(send, query)))!;
const windowsOf = async (make: object, crop = 'lettuce'): Promise<WindowAnswer> => {
  const json = { crop, where: { place: 'quillmere', bed: make } };
  return (await send({ method: 'POST', path: '/v1/sowing-windows', json })).body as WindowAnswer;
};
const windowsIn = async (bed: string, crop = 'lettuce'): Promise<WindowAnswer> =>
  (await send({ method: 'GET', path: `/v1/beds/${bed}/sowing-windows?crop=${crop}` })).body as WindowAnswer;
/** As `Tuesday 17 August`. */
const named = (date: string, hasWeekday = true): string =>
  new Intl.DateTimeFormat('en-GB', {
    ...(hasWeekday ? { weekday: 'long' } : {}),
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  }).format(new Date(date));
const NORTH = { kind: 'open-ground', cover: 'bare', moisture: 'moist' } as const;

describe('when to sow', () => {
  test('says the best date, what the heat ahead costs, the date that is free of it, and how long one can go on', async () => {
    const { shown } = await answerTo('bed=north');
    const path = '/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03';
    const { hotSpells } = (await send({ method: 'GET', path })).body as ForecastAnswer;
    const [{ delayDays, freeDate: free }] = hotSpells! as [NonNullable<typeof hotSpells>[number]];
    const { date: freeDate, hotHoursLeft } = free!;
    const season = await windowsIn('north');
    expect(season).toMatchObject({ best: { date: '2027-08-03' }, years: { count: 5 } });
    const text = seen(shown);
    expect(text).toContain(
      'Sow lettuce in North bed today, Tuesday 3 August: in all 5 past years enough of it came up',
    );
    expect(text).toMatch(new RegExp(`The heat of 3 ?– ?\\d+ August holds half back by ${delayDays!.half} days`));
    expect(text).toContain(
      `sown on ${named(freeDate)} it meets ${hotHoursLeft === 0 ? 'none' : `only ${hotHoursLeft} hours of it`}.`,
    );
    expect(text).toContain(`Go on until ${named(season.windows[0]!.to, false)}; then `);
    expect(text).toContain(`Sow again from ${named(season.windows[1]!.from, false)} on.`);
  });

  test('says when a crop that heat stops can be sown again', async () => {
    const season = await windowsIn('north', 'spinach');
    // Second best is not closed.
    expect(season.spans[0]).toMatchObject({ from: '2027-08-03', grade: 'fair', reasons: [{ code: 'too-hot' }] });
    expect(season.closed.every(({ from }) => from > season.spans[0]!.to)).toBe(true);
    const text = seen((await answerTo('bed=north&crop=spinach')).shown);
    expect(text).toContain(`Sow spinach in North bed on ${named(season.best!.date)}:`);
    expect(text).not.toContain('it is too hot');
  });

  test('says plainly what shade changes: the season, the date, and the heat ahead', async () => {
    const { later } = await answerTo('bed=north');
    const text = seen(await later!());
    const [asIs, shaded] = [await windowsOf(NORTH), await windowsOf({ ...NORTH, shadePercent: 50 })];
    const mostOf = ({ dates }: WindowAnswer): number => dates[0]!.mostDays!.p50;
    expect(mostOf(shaded)).toBeLessThan(mostOf(asIs) - 0.5);
    expect(text).toContain(`In half shade nine tenths are up in ${mostOf(shaded)} days rather than ${mostOf(asIs)}.`);
    expect(text).toMatch(/In half shade the seed lies \d+ to \d+ °C cooler in the afternoons of 3 ?– ?9 August/);
    expect(text).toMatch(/spared \d+ to \d+ hot hours/);
    expect(text).toMatch(/In half shade closed .* March .*\./);
    expect(text).toMatch(/Indoors at 18 °C it can be sown at any time/);
    expect(text).toContain('The bed’s own thermometer is left out here');
  });

  test('moves to another date at once, with what the windows say of it, and to its forecast after', async () => {
    const { atDate, later } = await answerTo('bed=north&beside=carrot');
    await later!();
    const { dates } = await windowsIn('north');
    const one = dates.find(({ date }) => date === '2027-09-10')!;
    const { name, atOnce, whole } = atDate!('2027-09-10');
    expect(name).toBe('Friday 10 September');
    const text = seen(atOnce['at-date']!);
    expect(text).toContain('Sown on Friday 10 September');
    expect(text).toContain(`Half ${one.halfDays!.p50} days ${one.halfDays!.p10} to ${one.halfDays!.p90}`);
    expect(seen(atOnce['ways-at-date']!)).toMatch(/As it is .* In half shade .* Under fleece .* Indoors at 18 °C/);
    expect(seen(atOnce['crops-at-date']!)).toMatch(/Lettuce .* Carrot/);
    expect(seen((await whole())['of-date']!)).toMatch(/Half of those are up 1\d ?– ?1\d September/);
  });

  test('takes what stands beside it along to another date, even where it came with the page', async () => {
    const { atDate } = await answerTo('bed=north&beside=carrot');
    const parts = await atDate!('2027-09-10').whole();
    expect(seen(parts['ways-at-date']!)).toMatch(/Sown on Friday 10 September .* In half shade/);
    expect(seen(parts['crops-at-date']!)).toMatch(/Sown on Friday 10 September .* Carrot/);
  });

  test('sets other crops beside it, and the one that is asked for first', async () => {
    const text = seen(await (await answerTo('bed=north&beside=spinach,lettuce,,nonsense')).later!());
    expect(text).toMatch(/Crops side by side .*Lettuce open 3 – \d+ August .*Spinach open .*best on/s);
  });

  test('sows at a kept place without a bed, and has no leaf of one sowing to lead to', async () => {
    const { shown, later } = await answerTo('bed=&place=quillmere');
    expect(seen(shown)).toContain('Sow lettuce in open ground at Quillmere Allotment Society');
    expect(shown.markup).not.toContain('All about a sowing');
    expect(seen(await later!())).not.toContain('own thermometer');
  });

  test('says how to mend it where too few years are known, and leads on to one sowing', async () => {
    await send({
      method: 'PUT',
      path: '/v1/places/new',
      json: { name: 'New', latitude: 44, longitude: -30, timeZone: 'UTC' },
    });
    await send({ method: 'PUT', path: '/v1/beds/young', json: { place: 'new', name: 'Young bed' } });
    const { shown } = await answerTo('bed=young&crop=carrot');
    expect(seen(shown)).toMatch(/Too few past years .* of New fewer than three are known\. .* three years or more/);
    expect(shown.markup).toContain('href="/?bed=young&amp;crop=carrot"');
    expect(seen((await answerTo('bed=nowhere')).shown)).toContain('choose another bed');
  });

  test.each(['2027-13-40', '2027-02-30', 'soon'])(
    'looks at the best date where %s, which is none, is asked for',
    async (date) => {
      expect(seen((await answerTo(`bed=north&sowing=${date}&from=${date}`)).shown)).toContain(
        'Sown on Tuesday 3 August',
      );
    },
  );

  test('says which dates are looked at where the date asked for is none of them', async () => {
    expect(seen((await answerTo('bed=north&sowing=2026-05-01')).shown)).toContain(
      'Past years are looked at for dates from Tuesday 3 August to Tuesday, 1 August 2028.',
    );
  });

  test('puts no slider beyond its ends, from where the browser would move the date', async () => {
    for (const sowing of ['2026-05-01', '2027-10-01', '2030-01-01']) {
      const { markup } = (await answerTo(`bed=north&sowing=${sowing}`)).shown;
      const [min, max, value] = ['min', 'max', 'value'].map((name) =>
        Number(new RegExp(`id="date-moved"[^>]* ${name}="(\\d+)"`).exec(markup)![1]),
      ) as [number, number, number];
      const day = Date.parse(sowing) / 86_400_000;
      expect(value).toBe(Math.min(max, Math.max(min, day)));
    }
  });

  test('gives the dates as CSV, and the strip as a picture', async () => {
    const { table, picture } = await answerTo('bed=north');
    const lines = table!().trimEnd().split('\r\n');
    expect(lines).toHaveLength(366);
    expect(new Set(lines.map((line) => line.split(',').length))).toEqual(new Set([14]));
    expect(lines[1]).toMatch(/^2027-08-03,100,open,/);
    expect(picture!()).toMatch(/^<svg.*When to sow lettuce, North bed/s);
  });

  test('asks for what it needs, and carries unseen what other leaves ask', async () => {
    const asked = await askedOf(send, 'view=when&bed=north&source=days&firstDay=2027-08-01&min=9&max=20&medium=air');
    const { markup } = whenView.form(asked);
    for (const name of ['bed', 'crop', 'beside', 'from', 'sowing', 'prefer', 'seeds'])
      expect(markup).toContain(`name="${name}"`);
    for (const held of ['name="source" value="days"', 'name="firstDay" value="2027-08-01"', 'name="min" value="9"'])
      expect(markup).toContain(held);
  });

  test('escapes what people named', async () => {
    await send({ method: 'PUT', path: '/v1/beds/odd', json: { ...NORTH, place: 'quillmere', name: '<b onclick=x>' } });
    const { shown, later } = await answerTo('bed=odd');
    expect(html`${shown}${await later!()}`.markup).not.toContain('<b onclick');
  });
});

describe('a question in a link', () => {
  test('holds crops to be set beside it once, whether they came in one field or in several', () => {
    const question = questionFrom(new URLSearchParams('view=when&beside=carrot&beside=&beside=beet'), { beds: [] });
    expect(question.beside).toBe('carrot,beet');
    expect(linkTo(question)).toContain('beside=carrot%2Cbeet');
    expect(questionFrom(new URLSearchParams(linkTo(question).slice(2)), { beds: [] })).toEqual(question);
  });
});
