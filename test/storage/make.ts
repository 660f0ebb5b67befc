import { addDays, findDate, type PlainDate } from '../../src/basics/calendar.js';
import type { Count, LotFields, PlanFields, SowingFields } from '../../src/garden/store/season-store.js';
import type { AirDay, BedFields, PlaceFields } from '../../src/garden/store/store.js';
import type { Readings } from '../../src/readings/readings.js';

export const quillmere: PlaceFields = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  elevationM: 12,
  timeZone: 'Etc/GMT+2',
  annualRainMm: null,
  lastFrostAround: null,
  firstFrostAround: null,
  sources: [],
};

export const northBed: BedFields = {
  place: 'quillmere',
  name: 'North bed',
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'rain',
  shadePercent: 10,
  roomC: null,
};

export const probe = { medium: 'soil', probeDepthCm: 5 } as const;

export const date = (text: string): PlainDate => findDate(text)!;

/** Readings at even steps from an instant on, all measured. */
export function readingsFrom(start: string, stepMinutes: number, valuesC: readonly number[]): Readings {
  const startMs = Date.parse(start);
  return {
    atMs: Float64Array.from(valuesC, (_, i) => startMs + i * stepMinutes * 60_000),
    valueC: Float64Array.from(valuesC),
    basis: new Uint8Array(valuesC.length),
  };
}

/** Readings of as many hours, of a day that swings between 10 and 20 °C. */
export const hours = (start: string, n: number): Readings =>
  readingsFrom(
    start,
    60,
    Array.from({ length: n }, (_, i) => 15 + 5 * Math.sin((2 * Math.PI * i) / 24)),
  );

export const airFrom = (first: string, maxC: readonly number[]): AirDay[] =>
  maxC.map((max, i) => ({ date: addDays(date(first), i), min: max - 10, mean: null, max }));

export const lot: LotFields = {
  crop: 'carrot',
  germinationPercent: 81.5,
  test: { sown: 100, germinated: 83 },
  testedOn: date('2027-01-10'),
  packedYear: 2026,
  moisturePercent: null,
  storeC: 12.5,
  hotLimitShiftC: -0.5,
};
export const sowing: SowingFields = {
  bed: 'north',
  crop: 'carrot',
  date: date('2027-05-03'),
  time: '18:00',
  depthCm: 1.3,
  seeds: 200,
  lot: null,
  method: 'direct',
  roomC: null,
};
export const plan: PlanFields = {
  bed: 'north',
  crop: 'carrot',
  harvest: { from: date('2027-08-01'), to: date('2027-10-31'), perWeek: 40 },
};
export const count = (day: string, seedlings: number, rest: Partial<Count> = {}): Count => ({
  date: date(day),
  seedlings,
  ofSeeds: null,
  thinned: false,
  ...rest,
});
