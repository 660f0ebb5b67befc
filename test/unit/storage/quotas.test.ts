import { expect, test } from 'vitest';
import { DEFAULT_QUOTAS } from '../../../src/garden/store/quotas.js';
import { openStore } from '../../../src/storage/open-store.js';
import { airFrom, hours, northBed, probe, quillmere, readingsFrom } from '../../storage/make.js';

const many = (start: string) =>
  readingsFrom(
    start,
    10,
    Array.from({ length: 40_000 }, (_, i) => i % 20),
  );

test('a quota of a megabyte is full at 62,500 readings; what is refused is undone, what is deleted makes room', async () => {
  const store = await openStore('sqlite::memory:', { quotas: { ...DEFAULT_QUOTAS, megabytes: 1 } });
  const used = async () => (await store.usage('mine')).megabytes * 1e6;
  await store.putPlace('mine', 'quillmere', quillmere);
  for (const bed of ['north', 'south']) await store.putBed('mine', bed, northBed);
  await store.putReadings('mine', 'north', probe, many('2025-01-01T00:00Z'));
  expect(await used()).toBe(16 * 40_000);
  await store.putReadings('mine', 'north', probe, many('2025-01-01T00:00Z'));
  expect(await used()).toBe(16 * 40_000);
  const more = store.putReadings('mine', 'south', probe, many('2026-01-01T00:00Z'));
  await expect(more).rejects.toMatchObject({ quota: 'megabytes', limit: 1, used: 2 });
  expect(await store.series('mine', 'south')).toEqual([]);
  await store.putReadings('mine', 'south', probe, hours('2026-01-01T00:00Z', 100));
  await store.putAir('mine', 'quillmere', airFrom('2027-05-01', [1, 2, 3]));
  expect(await used()).toBe(16 * 40_100 + 34 * 3);
  await store.deleteReadings('mine', 'south', { toMs: Date.parse('2026-01-01T10:00Z') });
  await store.deleteAir('mine', 'quillmere', { from: airFrom('2027-05-03', [1])[0]!.date });
  expect(await used()).toBe(16 * 40_090 + 34 * 2);
  await store.deleteBed('mine', 'north');
  expect(await used()).toBe(16 * 90 + 34 * 2);
  await store.putReadings('mine', 'south', probe, many('2026-03-01T00:00Z'));
  await store.putPlace('mine', 'quillmere', { ...quillmere, timeZone: 'Etc/GMT+5' });
  expect(await used()).toBe(16 * 40_090 + 34 * 2);
  await store.deletePlace('mine', 'quillmere', { withBeds: true });
  expect(await used()).toBe(0);
  await store.close();
});
