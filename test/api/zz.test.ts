import { test } from 'vitest';
import { serviceLog } from '../../src/http/server/service-log.js';
import { startApp } from './helper.js';

test('x', async () => {
  const app = await startApp({ log: serviceLog('error', { write: (l) => console.log(l.replaceAll('\\n', '\n')) }) });
  const put = (url: string, payload: object) => app.inject({ method: 'PUT', url, payload });
  await put('/v1/places/q', { name: 'Q', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' });
  const daily = Array.from({ length: 1500 }, (_, i) => ({
    date: new Date(Date.UTC(2023, 5, 25) + i * 864e5).toISOString().slice(0, 10),
    min: 10,
    max: 20,
  }));
  console.log(
    (await app.inject({ method: 'POST', url: '/v1/places/q/air', payload: { medium: 'air', daily } })).statusCode,
  );
  await put('/v1/beds/n', { place: 'q', name: 'n', kind: 'open-ground', moisture: 'moist' });
  const r = await put('/v1/sowings/s', { bed: 'n', crop: 'lettuce', date: '2027-07-25', seeds: 100 });
  console.log(r.statusCode, r.body.slice(0, 600));
});
