import { afterAll, describe, expect, it } from 'vitest';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { RiskAnswer } from '../../src/contract/risk.js';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { dateAfter, post, quillmere, startApp } from './helper.js';

// What threatens rows, from past years sent with the question: every day of the year as warm in each of them, but for a slow wave.

const app = await startApp();
afterAll(() => app.close());

/** Years that warm by a wave from 1 °C in January to 21 °C in July: every year is alike. */
const air = (years: number, { start = 2027 - years, to = '2026-12-31' } = {}) => {
  const daily = [];
  for (let day = 0, date = `${start}-01-01`; date <= to; date = dateAfter(`${start}-01-01`, ++day)) {
    const level = 11 - 10 * Math.cos((2 * Math.PI * (day - 20)) / 365.25);
    daily.push({ date, min: level - 5, max: level + 5 });
  }
  return { medium: 'air', daily };
};

const asked = async <A>(path: string, question: object, query = ''): Promise<A> => {
  const response = await post(app, `${path}${query}`, {
    where: { place: quillmere, bed: { moisture: 'moist' } },
    temperatures: [air(4)],
    ...question,
  });
  if (response.statusCode !== 200) throw new Error(response.body);
  return response.json();
};
const windows = (question: object, query?: string): Promise<WindowAnswer> =>
  asked('/v1/sowing-windows', { from: '2027-03-01', to: '2027-09-30', ...question }, query);
const forecast = (crop: string, date: string, more: object = {}): Promise<ForecastAnswer> =>
  asked('/v1/forecasts', { crop, sowing: { date }, ...more });
const pests = (risks: readonly RiskAnswer[]): RiskAnswer[] => risks.filter(({ id }) => id !== 'damping-off');

/** Degree days by hand, from the wave of the years. */
function dayReached(sum: number, baseC: number): string {
  for (let day = 0, warmth = 0; ; day++) {
    warmth += Math.max(0, 11 - 10 * Math.cos((2 * Math.PI * (day - 20)) / 365.25) - baseC);
    if (warmth >= sum) return dateAfter('2027-01-01', day);
  }
}

describe('what threatens a row', () => {
  it('is told with sowing windows: which pest, from when to when, by which sum, in how many years, and what helps', async () => {
    const answer = await windows({ crop: 'radish' });
    expect(answer.risks.map(({ id }) => id)).toEqual(['cabbage-maggot', 'cabbage-maggot', 'cabbage-maggot']);
    const [first] = answer.risks as [RiskAnswer];
    expect(first).toMatchObject({
      threatens: 'root',
      degreeDays: { baseC: 6.1, ceilingC: null, since: '01-01', sum: 167, soFar: null, asOf: null },
      inYears: 4,
      ofYears: 4,
      code: 'risk.cabbage-maggot',
      params: { brood: 1, peakDate: first.peak },
    });
    const apart = (Date.parse(first.peak!) - Date.parse(dayReached(167, 6.1))) / 86_400_000;
    expect(Math.abs(apart)).toBeLessThanOrEqual(1);
    expect(first.from <= first.peak! && first.peak! <= first.to).toBe(true);
    expect(first.text).toMatch(/^Net the row/);
    expect(first.source).toMatch(/Eckenrode/);
    // Local advice and labels, once.
    expect(answer.assumptions.filter(({ code }) => code === 'pest-dates')).toMatchObject([
      { params: { years: 4 }, text: expect.stringContaining('local advice') },
    ]);
    for (const window of answer.windows) {
      for (const risk of window.risks) expect(answer.risks).toContainEqual(risk);
    }
    expect(answer.windows.flatMap(({ risks }) => risks).length).toBeGreaterThan(0);
  });

  it('is told in German to whom asks for it, and never names a product', async () => {
    const english = await windows({ crop: 'carrot' });
    const german = await windows({ crop: 'carrot' }, '?lang=de');
    expect(german.risks.map(({ id, from, to }) => [id, from, to])).toEqual(
      english.risks.map(({ id, from, to }) => [id, from, to]),
    );
    expect(new Set(english.risks.map(({ id }) => id))).toEqual(new Set(['carrot-rust-fly', 'carrot-weevil']));
    for (const { text } of german.risks) expect(text).toMatch(/Netz/);
    for (const { text } of [...english.risks, ...german.risks]) {
      expect(text).not.toMatch(/spray|insecticid|pesticid|treat|spritz|Mittel/i);
    }
  });

  it('is nothing for crops that no rule names, indoors, without past years, or from normals', async () => {
    expect((await windows({ crop: 'lettuce' })).risks).toEqual([]);
    expect((await windows({ crop: 'lettuce' })).assumptions.map(({ code }) => code)).not.toContain('pest-dates');
    const indoors = { where: { place: quillmere, bed: { kind: 'indoors', roomC: 20 } } };
    expect((await forecast('radish', '2027-04-20', { ...indoors, temperatures: [] })).risks).toEqual([]);
    const spring = { ...air(1), daily: air(1, { start: 2027, to: '2027-05-20' }).daily };
    expect(pests((await forecast('radish', '2027-04-20', { temperatures: [spring] })).risks)).toEqual([]);
  });

  it('comes with a forecast for the sowing alone: seed that is up before the flies come is not theirs', async () => {
    const of = async (date: string) => pests((await forecast('snap-bean', date)).risks).map(({ peak }) => peak);
    const all = (await windows({ crop: 'snap-bean' })).risks.map(({ peak }) => peak);
    expect(all).toHaveLength(3);
    const second = all[1]!;
    expect(await of(dateAfter(second, -3))).toEqual([second]);
    expect(await of(dateAfter(second, 4))).toEqual([]);
  });

  it('goes by the warmth of the year itself, once that is known', async () => {
    const warmSpring = air(5, { start: 2023, to: '2027-04-10' }).daily.map((day) =>
      day.date >= '2027-03-01' ? { ...day, min: day.min + 6, max: day.max + 6 } : day,
    );
    const usual = (await windows({ crop: 'radish' })).risks[0]!;
    const early = (await windows({ crop: 'radish', temperatures: [{ medium: 'air', daily: warmSpring }] })).risks[0]!;
    expect(early.peak! < usual.peak!).toBe(true);
    expect(early.degreeDays!.asOf! <= '2027-04-10').toBe(true);
    expect(early.degreeDays!.soFar).toBeGreaterThan(0);
  });

  it('is damping-off where seed lies slowly in soil colder than it likes, and not in warm soil', async () => {
    const slow = (await forecast('snap-bean', '2027-05-01')).risks.filter(({ id }) => id === 'damping-off');
    expect(slow).toMatchObject([
      { threatens: 'seedling', from: '2027-05-01', peak: null, degreeDays: null, ofYears: null },
    ]);
    const quick = (await forecast('radish', '2027-07-10')).risks;
    expect(quick.map(({ id }) => id)).not.toContain('damping-off');
  });
});
