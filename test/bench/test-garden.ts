import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import { type DemoAirDay, inventedAir } from '../../src/demo/air.js';
import { chance } from '../../src/demo/chance.js';
import type { Beside } from './run-beside.js';

/** Two owners, their keys, and the ids of what they keep. */
export const owners = {
  ann: { key: 'bench-key-of-ann', beds: ['fifteen-open', 'fifteen-raised', 'thirty-open', 'thirty-raised'] },
  ben: { key: 'bench-key-of-ben', beds: ['fifteen-open', 'fifteen-raised'] },
} as const;
export type OwnerName = keyof typeof owners;

export const apiKeys = Object.entries(owners)
  .map(([owner, { key }]) => `${owner}:${key}`)
  .join();

export const headersOf = (owner: OwnerName): Record<string, string> => ({
  authorization: `Bearer ${owners[owner].key}`,
});

const SEED = 44_030;
const HALF_A_YEAR_DAYS = 182;
const PROBED_DAYS = 60;

/** It is the growing season in the garden whenever the bench runs: from October to March it lies in the south. */
export const today = new Date(Date.now() - 2 * 3_600_000).toISOString().slice(0, 10) as PlainDate;
const isSouth = !(today.slice(5) >= '04-01' && today.slice(5) <= '09-30');
export const site = {
  latitude: isSouth ? -44 : 44,
  longitude: -30,
  timeZone: 'Etc/GMT+2',
  annualRainMm: 900,
};

/** Days of air up to yesterday, and on request days beyond, the same ones in every run of a day. */
export function airOf(years: number, daysAhead = 0): DemoAirDay[] {
  const first = addDays(
    `${Number(today.slice(0, 4)) - years}${today.slice(4)}`.replace('02-29', '03-01') as PlainDate,
    0,
  );
  const shift = isSouth ? HALF_A_YEAR_DAYS : 0;
  const all = inventedAir(addDays(first, -shift), 366 * years + daysAhead, chance(SEED));
  return all
    .map((day) => ({ ...day, date: addDays(day.date, shift) }))
    .filter(({ date }) => date < addDays(today, daysAhead));
}

/** The sowings of each bed, the first of them counted. */
export const sowings = [
  { name: 'carrot', crop: 'carrot', daysAgo: 30 },
  { name: 'lettuce', crop: 'lettuce', daysAgo: 12 },
  { name: 'radish', crop: 'radish', daysAgo: 6 },
  { name: 'onion', crop: 'onion', daysAgo: 3 },
] as const;
const counts = [
  [18, 6],
  [14, 31],
  [9, 64],
  [2, 80],
] as const;

export const sowingId = (bed: string, name: (typeof sowings)[number]['name']): string => `${bed}-${name}`;

/** Hourly readings of a probe at 5 cm: the air's mean of the day, and half of its swing, three hours later. */
function probeReadings(): { at: string; value: number }[] {
  return airOf(1)
    .slice(-PROBED_DAYS)
    .flatMap(({ date, min, max }) =>
      Array.from({ length: 24 }, (_, hour) => ({
        at: `${date}T${String(hour).padStart(2, '0')}:00:00-02:00`,
        value: (min + max) / 2 + ((max - min) / 4) * Math.sin((2 * Math.PI * (hour - 11)) / 24),
      })),
    );
}

type Send = (method: 'PUT' | 'POST', path: string, body: object, status?: number) => Promise<void>;

const sender =
  (service: Beside, headers: Record<string, string>): Send =>
  async (method, path, body, status = 201) => {
    await service.ask({ method, path, body, headers, status });
  };

/** Has a service keep the garden: air of 15 and of 30 past years, two beds each, one of them with a probe. */
export async function keepGarden(service: Beside): Promise<void> {
  for (const owner of Object.keys(owners) as OwnerName[]) {
    for (const years of [15, 30] as const) {
      const place = years === 15 ? 'fifteen' : 'thirty';
      const beds = owners[owner].beds.filter((bed) => bed.startsWith(place));
      if (beds.length > 0) await keepPlace(sender(service, headersOf(owner)), place, years, beds);
    }
  }
}

/** Another owner's garden: 15 years of air, two beds, eight sowings. */
export const keepSmallGarden = (service: Beside, headers: Record<string, string>): Promise<void> =>
  keepPlace(sender(service, headers), 'fifteen', 15, owners.ben.beds);

/** The days that a source tells again, and those that it foretells; each number makes others. */
export const sourceDays = (number: number) => ({
  measured: airOf(1).slice(-60),
  coming: airOf(1, 7)
    .slice(-7)
    .map((day) => ({ ...day, max: day.max + number / 10 })),
});

async function keepPlace(send: Send, id: string, years: number, beds: readonly string[]): Promise<void> {
  await send('PUT', `/v1/places/${id}`, { name: 'Quillmere Allotment Society', ...site });
  await send('POST', `/v1/places/${id}/air`, { medium: 'air', daily: airOf(years) }, 200);
  await send('PUT', `/v1/places/${id}/coming-days`, { medium: 'air', origin: 'forecast', daily: sourceDays(0).coming });
  for (const bed of beds) {
    const isOpen = bed.endsWith('open');
    const kind = isOpen ? 'open-ground' : 'raised-bed';
    await send('PUT', `/v1/beds/${bed}`, { place: id, name: bed, kind, moisture: 'moist' });
    if (!isOpen) continue;
    await send('POST', `/v1/beds/${bed}/readings`, { medium: 'soil', probeDepthCm: 5, readings: probeReadings() }, 200);
  }
  for (const bed of beds) {
    for (const { name, crop, daysAgo } of sowings) {
      const fields = { bed, crop, date: addDays(today, -daysAgo), seeds: 200 };
      await send('PUT', `/v1/sowings/${sowingId(bed, name)}`, fields);
    }
    for (const [daysAgo, seedlings] of counts) {
      await send('PUT', `/v1/sowings/${sowingId(bed, 'carrot')}/counts/${addDays(today, -daysAgo)}`, { seedlings });
    }
  }
}
