import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PlainDate } from '../../src/basics/calendar.js';
import type { SowingAnswer } from '../../src/contract/sowings.js';
import { inventedAir } from '../../src/demo/air.js';
import { chance } from '../../src/demo/chance.js';
import { askerOf, dateAfter, quillmere, startApp } from './helper.js';

/** Noon at Quillmere on a date. */
const noonOn = (date: string): Date => new Date(`${date}T14:00:00Z`);

let today = noonOn('2027-10-20');
let app: FastifyInstance;
let ask: ReturnType<typeof askerOf>;

beforeAll(async () => {
  app = await startApp({ clock: () => today });
  ask = askerOf(app);
  await ask('PUT', '/v1/places/quillmere', { name: 'Quillmere Allotment Society', ...quillmere });
  const daily = inventedAir('2017-05-20' as PlainDate, 3800, chance(7));
  await ask('POST', '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily });
  await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', moisture: 'moist' });
});
afterAll(() => app.close());

let beds = 0;
/** A row in a bed of its own, so that no other teaches it. */
async function sown(crop: string, date: string, more: object = {}, bed: object = { moisture: 'moist' }) {
  const id = `bed-${++beds}`;
  await ask('PUT', `/v1/beds/${id}`, { place: 'quillmere', name: 'Bed', ...bed });
  today = noonOn(date);
  const put = await ask('PUT', `/v1/sowings/${id}`, { bed: id, crop, date, seeds: 200, ...more });
  expect(put.statusCode, put.body).toBe(201);
  const count = async (days: number, seedlings: number): Promise<void> => {
    today = noonOn(dateAfter(date, days));
    const counted = await ask('PUT', `/v1/sowings/${id}/counts/${dateAfter(date, days)}`, { seedlings });
    expect(counted.statusCode, counted.body).toBe(201);
  };
  const after = async (days: number, query = ''): Promise<SowingAnswer> => {
    today = noonOn(dateAfter(date, days));
    return (await ask('GET', `/v1/sowings/${id}${query}`)).json();
  };
  return {
    id,
    count,
    after,
    /** Counts so many after some days, and asks how it stands on that day. */
    async counted(days: number, seedlings: number): Promise<SowingAnswer> {
      await count(days, seedlings);
      return after(days);
    },
  };
}

const codes = ({ triage }: SowingAnswer, isLikely: boolean) =>
  triage!.checkFor.filter(({ likely }) => likely === isLikely).map(({ code }) => code);

describe('what to do about a row', () => {
  test('is nothing to ask before it is due, a count once it is, and nothing where it stands', async () => {
    const row = await sown('carrot', '2027-06-01');
    expect((await row.after(2)).triage).toBeNull();
    expect((await row.after(20)).triage).toMatchObject({ do: 'count', options: [], checkFor: [], params: {} });
    const { triage, judgement } = await row.counted(24, 120);
    expect(judgement!.verdict).toBe('good');
    expect(triage).toMatchObject({ do: 'nothing', params: { why: 'stands' }, options: [], checkFor: [] });
  });

  test('in midsummer a bare row is given time, and sown again by what that costs, not by certainty', async () => {
    const row = await sown('carrot', '2027-06-01');
    const waiting = (await row.counted(8, 0)).triage!;
    expect(waiting.do).toBe('wait');
    expect(waiting.options.map(({ action }) => action)).toEqual(['wait', 'sow-again']);
    const [wait, again] = waiting.options;
    expect(wait!.costs.daysLost!).toBeLessThan(again!.costs.daysLost!);
    expect([wait!.costs.seeds, again!.costs.seeds]).toEqual([0, 200]);
    expect(wait!.odds.stands + wait!.odds.lost!).toBeCloseTo(1, 5);
    // It is told when that turns, and then it does.
    const turnsOn = String(waiting.params!.againOn);
    const days = (Date.parse(turnsOn) - Date.parse('2027-06-01')) / 86_400_000;
    const turned = await row.counted(days, 0);
    expect(turned.triage).toMatchObject({ do: 'sow-again', params: { from: null, by: turned.resowBy } });
    expect(turned.judgement!.verdict).not.toBe('lost');
    expect(turned.toDo[0]).toMatchObject({ task: 'sow-again', to: turned.resowBy });
    expect(turned.triage!.options[0]).toMatchObject({ action: 'sow-again', by: turned.resowBy });
    expect(turned.triage!.text).toMatch(/^Probably lost \(\d+ in \d+\)\. Sow again now; the last good day is /);
    const german = await row.after(days, '?lang=de');
    expect(german.triage!.text).toMatch(/^Wahrscheinlich verloren \(\d+ von \d+\)\. Jetzt neu säen; /);
    expect(german.triage!.params).toEqual(turned.triage!.params);
  });

  test('near the end of its season the same odds are enough that would be waited for in June', async () => {
    const june = await sown('lettuce', '2027-06-08');
    const early = await june.counted(4, 0);
    const august = await sown('lettuce', dateAfter(early.resowBy!, -5));
    const late = await august.counted(4, 0);
    expect([early.triage?.do ?? 'wait', late.triage!.do]).toEqual(['wait', 'sow-again']);
    expect(late.judgement!.odds!.lost).toBeLessThan(0.8);
    expect(late.judgement!.verdict).not.toBe('lost');
  });

  test('when its season is over it is not sown again, and what still fits is named', async () => {
    const row = await sown('carrot', '2027-08-10');
    for (const days of [8, 12, 16, 20, 24]) await row.count(days, 0);
    const { triage, judgement, resowBy } = await row.counted(30, 0);
    expect([judgement!.verdict, resowBy]).toEqual(['lost', null]);
    expect(triage).toMatchObject({ do: 'nothing', params: { why: 'too-late', crop: 'carrot' } });
    expect(triage!.params!.fitting).toMatch(/^radish/);
    expect(triage!.text).toMatch(/^Too late this season to sow carrot again\. These still fit: radish/);
    const after = await row.after(70);
    expect(after.triage!.text).toBe('Too late this season to sow carrot again.');
    expect(after.triage!.params!.fitting).toBe('');
  });

  test('where it lives but stands thin, its gaps are filled', async () => {
    const row = await sown('lettuce', '2027-06-01');
    for (const days of [14, 18, 22]) await row.count(days, 10);
    const { triage, judgement, toDo } = await row.counted(26, 10);
    expect(judgement!.verdict).toBe('thin');
    expect(triage).toMatchObject({ do: 'fill-gaps', options: [{ action: 'fill-gaps' }] });
    expect(triage!.options[0]!.costs.seeds!).toBeLessThan(200);
    expect(toDo[0]!.task).toBe('fill-gaps');
  });

  test('comes with a page of sowings where it is asked for, and not else', async () => {
    const row = await sown('carrot', '2027-06-01');
    const { triage } = await row.counted(12, 0);
    const listed = async (parts: string) =>
      (await ask('GET', `/v1/sowings?bed=${row.id}&with=${parts}`)).json().sowings[0];
    expect((await listed('triage')).triage).toEqual(triage);
    expect(await listed('judgement')).not.toHaveProperty('triage');
  });

  test('is told alike by the answer, by what there is to do, and by the bed’s calendar', async () => {
    const row = await sown('carrot', '2027-06-01');
    for (const days of [8, 12]) await row.count(days, 0);
    const { triage, toDo, resowBy } = await row.after(14);
    const { calendarUrl } = (await ask('GET', `/v1/beds/${row.id}`)).json();
    const calendar = (await ask('GET', calendarUrl)).body.replaceAll('\r\n ', '');
    const event = calendar.split('BEGIN:VEVENT').find((one) => one.includes('sow-again.'))!;
    expect(triage!.do).toBe('sow-again');
    expect([triage!.params!.by, triage!.options[0]!.by, toDo[0]!.to]).toEqual([resowBy, resowBy, resowBy]);
    expect(event).toContain(`DTSTART;VALUE=DATE:${resowBy!.replaceAll('-', '')}`);
    expect(event.replaceAll('\\', '')).toContain(triage!.text);
  });

  test('is decided without dates where past years do not tell', async () => {
    await ask('PUT', '/v1/beds/room', { place: 'quillmere', name: 'Room', kind: 'indoors', roomC: 15 });
    today = noonOn('2027-06-01');
    await ask('PUT', '/v1/sowings/tray', {
      bed: 'room',
      crop: 'onion',
      date: '2027-05-03',
      seeds: 100,
      method: 'indoors',
    });
    for (const date of ['2027-05-20', '2027-05-24', '2027-05-28']) {
      await ask('PUT', `/v1/sowings/tray/counts/${date}`, { seedlings: 0 });
    }
    const { triage, judgement } = (await ask('GET', '/v1/sowings/tray')).json() as SowingAnswer;
    expect(judgement!.verdict).toBe('lost');
    expect(triage).toMatchObject({
      do: 'sow-again',
      params: { by: null },
      options: [{ by: null, costs: { daysLost: null }, harvest: null }, { action: 'wait' }],
    });
    expect(triage!.checkFor.map(({ code }) => code)).not.toContain('eaten');
  });
});

describe('why little or nothing came up', () => {
  test('too deep, under rain alone, of a lot that is too old, is likely; what is not known is only to be looked for', async () => {
    await ask('PUT', '/v1/lots/tin', { crop: 'onion', packedYear: 2023 });
    const row = await sown('onion', '2027-06-01', { depthCm: 5, lot: 'tin' }, { moisture: 'rain' });
    await row.count(16, 0);
    const answer = await row.counted(24, 0);
    expect(codes(answer, true)).toEqual(expect.arrayContaining(['dry', 'too-deep', 'old-seed']));
    expect(codes(answer, false)).toEqual(expect.arrayContaining(['crust', 'eaten']));
    const german = await row.after(24, '?lang=de');
    expect(german.triage!.checkFor.find(({ code }) => code === 'too-deep')).toMatchObject({
      text: 'Der Samen liegt 5 cm tief; üblich sind 1,3 cm. Tiefe Keimlinge kommen spät, schwach oder gar nicht.',
      params: { depthCm: 5 },
    });
  });

  test('neither depth nor age is told of where both are known to be good', async () => {
    await ask('PUT', '/v1/lots/fresh', { crop: 'onion', packedYear: 2027, germinationPercent: 90 });
    // Sown in June it would make no bulbs: that takes leaves grown before the longest days (Brewster; OSU Extension).
    const row = await sown('onion', '2027-04-20', { depthCm: 1.3, lot: 'fresh' });
    await row.count(30, 0);
    const answer = await row.counted(40, 0);
    expect(answer.triage!.checkFor.map(({ code }) => code)).not.toContain('too-deep');
    expect(answer.triage!.checkFor.map(({ code }) => code)).not.toContain('old-seed');
    expect(codes(answer, true)).toEqual([]);
  });

  test('beans sown into cold ground: the date and the cold', async () => {
    const row = await sown('snap-bean', '2027-03-10');
    const answer = await row.counted(60, 0);
    expect(codes(answer, true)).toEqual(expect.arrayContaining(['cold', 'wrong-date']));
    expect(answer.triage!.checkFor.find(({ code }) => code === 'wrong-date')!.text).toMatch(
      /^10 March 2027 is a poor date/,
    );
  });

  test('lettuce in a hot room: the heat', async () => {
    const row = await sown('lettuce', '2027-07-20', {}, { kind: 'indoors', roomC: 35, moisture: 'moist' });
    const answer = await row.counted(23, 0);
    expect(codes(answer, true)).toContain('heat');
    const heat = answer.triage!.checkFor.find(({ code }) => code === 'heat')!;
    // Each hour from noon of the first day on; the last day counts whole.
    expect(heat.params!.hours).toBeGreaterThan(20 * 24);
  });

  test('seedlings that were there before were eaten', async () => {
    const row = await sown('lettuce', '2027-06-01');
    await row.count(14, 90);
    const answer = await row.counted(20, 4);
    expect(codes(answer, true)).toEqual(['eaten']);
    expect(answer.triage!.checkFor[0]!.text).toMatch(/^90 seedlings were up on 15 June 2027\. Look for slug trails/);
  });
});
