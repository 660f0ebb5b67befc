import { describe, expect, it } from 'vitest';
import { type FindPast, type PastSoil, pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../../src/answers/question.js';
import { usualCriteria } from '../../../src/answers/windows/dates-in-years.js';
import { judgedDates, type WindowQuestion } from '../../../src/answers/windows/judged-dates.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { CLOSED_AS } from '../../../src/answers/windows/why-nots.js';
import { addDays, daysBetween, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { readSeries } from '../../../src/readings/read-series.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const zone = findZone('Etc/GMT+2')!;
const site = { zone, latitude: 40, longitude: -30, annualRainMm: null };

/** Eight invented years of air up to the end of 2026. */
function airOf(meanC: number, swingC: number) {
  const daily = Array.from({ length: 8 * 365 }, (_, day) => {
    const odd = 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 31);
    const mean = meanC - swingC * Math.cos((2 * Math.PI * (day - 25)) / 365.25) + odd;
    return { date: addDays(plain('2019-01-05'), day), min: mean - 6, max: mean + 6 };
  });
  return [readSeries({ medium: 'air', unit: 'C', daily }, zone, [])];
}
const PLACES = { cool: airOf(10, 10), warm: airOf(16, 11), hot: airOf(21, 9) };
const soils = new Map<string, PastSoil>();
const findPast: FindPast = (series, bedding, phaseMs) => {
  const key = JSON.stringify([series[0]!.days[0], bedding.bed, bedding.depthCm]);
  const past = soils.get(key) ?? pastSoil(series, bedding, phaseMs);
  soils.set(key, past);
  return past;
};
const questionOf = (crop: string, series: WindowQuestion['series']): WindowQuestion => ({
  crop: cropCalled(crop),
  site,
  bed: defaultBed,
  depthCm: 1.3,
  time: '12:00',
  lot: null,
  timeFactor: null,
  series,
  understood: [],
  from: plain('2027-01-01'),
  to: plain('2027-12-31'),
  criteria: { ...usualCriteria, maxDays: cropCalled(crop).maxDays },
  prefer: 'earliest',
  judge: 'harvest',
  normals: null,
});
const CASES = Object.entries(PLACES).flatMap(([place, series]) =>
  ['beet', 'lettuce', 'snap-bean', 'pea', 'onion'].map((crop) => [place, crop, series] as const),
);

describe.each(CASES)('spans of a %s place, %s', (_, crop, series) => {
  const question = questionOf(crop, series);
  const { spans, closed, windows, dates } = sowingWindows(question, findPast);

  it('hold every date once, of one grade, and are a week or more but at the ends', () => {
    spans.forEach(({ from, to, grade }, i) => {
      expect(from).toBe(i === 0 ? question.from : addDays(spans[i - 1]!.to, 1));
      if (i > 0 && i < spans.length - 1) expect(daysBetween(from, to) + 1).toBeGreaterThanOrEqual(7);
      for (const one of dates.filter(({ date }) => date >= from && date <= to)) expect(one.grade).toBe(grade);
    });
    expect(spans.at(-1)!.to).toBe(question.to);
  });

  it('change where the grade or the main reason does', () => {
    spans.slice(1).forEach((span, i) => {
      const [before, after] = [spans[i]!, span].map(({ grade, reasons }) => `${grade} ${reasons[0]?.code}`);
      expect(after).not.toBe(before);
    });
  });

  it('are closed where they are poor, for their first reason, and nowhere else', () => {
    for (const { from, to, why } of closed) {
      const within = spans.filter((span) => span.from >= from && span.to <= to);
      expect(within[0]!.from).toBe(from);
      expect(within.at(-1)!.to).toBe(to);
      for (const { grade, reasons } of within) expect([grade, CLOSED_AS[reasons[0]!.code]]).toEqual(['poor', why]);
      for (const window of windows) expect(window.to < from || window.from > to).toBe(true);
    }
    const daysOf = (all: readonly { readonly from: PlainDate; readonly to: PlainDate }[]): number =>
      all.reduce((sum, { from, to }) => sum + daysBetween(from, to) + 1, 0);
    expect(daysOf(closed)).toBe(daysOf(spans.filter(({ grade, reasons }) => grade === 'poor' && reasons.length > 0)));
  });

  it('count the years of their own days, and a date those of the week around it, as its sureness does', () => {
    const judged = judgedDates(question, findPast);
    for (const { grade, reasons } of spans) {
      for (const { text } of grade === 'good' ? [] : reasons) {
        if ('of' in text.params) expect(text.params.of).toBe('dates');
      }
    }
    const alone = dates.findIndex((one, day) => one.grade === 'poor' && judged.all[day]!.causes.size === 1);
    for (const day of alone < 0 ? [] : [alone]) {
      const [first] = judged.reasonsOn(day);
      const { params } = first!.text;
      if (!('inYears' in params)) continue;
      expect(params.of).toBe('date');
      const missed = (1 - dates[day]!.sureness!) * params.ofYears;
      expect(Math.abs(params.inYears - missed)).toBeLessThanOrEqual(2);
    }
  });
});
