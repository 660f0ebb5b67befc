import type { DrawnForecast, DrawnHours } from '../../../src/plot/drawn-forecast.js';
import type { DrawnSeason } from '../../../src/plot/season.js';
import { plainReader } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

/** English, in °C: what a picture's words are checked in. */
export const say = sayer(plainReader);

const DAY_MS = 86_400_000;
export const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/** A sowing at Quillmere of which as many days are told, half of them measured; it comes up in the first third of them. */
export function drawnForecast({
  sown = '2027-05-03',
  nDays = 22,
  ...other
}: Partial<DrawnForecast> & { readonly sown?: string; readonly nDays?: number } = {}): DrawnForecast {
  const at = (share: number): string => dateAfter(sown, Math.round(share * (nDays - 1)));
  const milestone = (share: number) => ({
    date: at(share),
    range: { from: at(share * 0.9), to: at(share * 1.1) },
    inBeds: { from: at(share), to: at(share * 1.4) },
  });
  return {
    sowing: { date: sown, depthCm: 1.3, seeds: 200 },
    countDays: nDays - 1,
    emergence: { first: milestone(0.2), half: milestone(0.3), most: milestone(0.45) },
    stand: { by: at(1), field: { from: 20, to: 66 }, seedlings: { from: 40, to: 133 } },
    hotSpells: [{ from: at(0.5), to: at(0.6), peakC: 34, thresholdC: 27 }],
    coldSpells: [],
    daily: Array.from({ length: nDays }, (_, day) => ({
      date: dateAfter(sown, day),
      min: 10 + (day % 5),
      mean: 15 + (day % 5),
      max: 22 + (day % 5),
      basis:
        day < nDays / 4 ? ('measured' as const) : day < nDays / 2 ? ('modelled' as const) : ('past-years' as const),
      emergedPercent: Math.max(0, Math.min(96, 8 * (day - nDays / 6))),
    })),
    ...other,
  };
}

/** The same by the hour. */
export function drawnHours({ daily }: DrawnForecast): DrawnHours {
  const hours = daily.flatMap(({ mean, max, basis }, day) =>
    Array.from({ length: 24 }, (_, hour) => ({
      atDay: day + (hour + 0.5) / 24,
      tempC: mean + (max - mean) * Math.sin((2 * Math.PI * (hour - 9)) / 24),
      basis,
    })),
  );
  return {
    atDay: hours.map(({ atDay }) => atDay),
    tempC: hours.map(({ tempC }) => tempC),
    basis: hours.map(({ basis }) => basis),
  };
}

/** A southern season across new year: open in spring and in autumn, too hot between. */
export const southernSeason: DrawnSeason = {
  dates: Array.from({ length: 200 }, (_, day) => ({
    date: dateAfter('2027-09-01', day),
    sureness: day < 90 || day > 150 ? 0.9 : 0.3,
  })),
  windows: [
    { from: '2027-09-01', to: '2027-11-29' },
    { from: '2028-01-30', to: '2028-03-18' },
  ],
  closed: [{ from: '2027-11-30', to: '2028-01-29', why: 'too-hot' }],
  best: { date: '2027-09-12', why: 'It is the surest date.' },
  criteria: { sureness: 0.8 },
  years: { count: 12 },
};
