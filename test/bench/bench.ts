import { Writable } from 'node:stream';
import type { FastifyInstance } from 'fastify';

// What is measured is what ships: the built code, not the sources as a test runner rewrites them.
const built = (file: string): string => new URL(`../../dist/${file}`, import.meta.url).href;
const { serviceLog } = (await import(
  built('http/server/service-log.js')
)) as typeof import('../../src/http/server/service-log.js');
const { buildApp } = (await import(built('http/app.js'))) as typeof import('../../src/http/app.js');
const { openLocalities } = (await import(
  built('localities/open-localities.js')
)) as typeof import('../../src/localities/open-localities.js');
const { openStore } = (await import(
  built('storage/open-store.js')
)) as typeof import('../../src/storage/open-store.js');
const { read } = (await import(built('http/question/read.js'))) as typeof import('../../src/http/question/read.js');
const { forecastBodySchema } = (await import(
  built('contract/forecast.js')
)) as typeof import('../../src/contract/forecast.js');

/** Rounds are interleaved, so that whatever else the machine does falls on every contestant alike. */
const ROUNDS = 7;

const place = { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };

const coolWeek = {
  crop: 'lettuce',
  where: { place },
  sowing: { date: '2027-04-12', seeds: 200 },
  temperatures: [
    {
      medium: 'soil',
      daily: [9.1, 9.6, 8.8, 10.2, 10.9, 10.4, 11.1].map((min, day) => ({
        date: `2027-04-${12 + day}`,
        min,
        max: min + 6.3,
      })),
    },
  ],
};

const hotFortnight = {
  crop: 'lettuce',
  where: { place },
  sowing: { date: '2027-07-28', seeds: 200 },
  temperatures: [
    {
      medium: 'soil',
      readings: Array.from({ length: 14 * 24 }, (_, hour) => {
        const isHot = hour >= 5 * 24 && hour < 9 * 24;
        const value = (isHot ? 28 : 20) + (isHot ? 8 : 5) * Math.sin((2 * Math.PI * (hour - 8)) / 24);
        return {
          at: new Date(Date.UTC(2027, 6, 25, 2) + hour * 3_600_000).toISOString(),
          value: Math.round(value * 10) / 10,
        };
      }),
    },
  ],
};

/** Sixty days of air over a bed whose soil is not measured. */
const sixtyDaysOfAir = {
  ...coolWeek,
  temperatures: [
    {
      medium: 'air',
      daily: Array.from({ length: 60 }, (_, day) => {
        const min = 3 + 0.1 * day + 2 * Math.sin(day * 1.7);
        return {
          date: new Date(Date.UTC(2027, 1, 18 + day)).toISOString().slice(0, 10),
          min: Math.round(min * 10) / 10,
          max: Math.round((min + 9 + 3 * Math.sin(day * 0.9)) * 10) / 10,
        };
      }),
    },
  ],
};

/** As shipped: headers, and the log at its default level, formatted and then thrown away. */
async function startApp(): Promise<FastifyInstance> {
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() });
  const app = await buildApp({
    version: 'bench',
    clock: () => new Date(),
    store: await openStore('sqlite::memory:'),
    localities: openLocalities(new URL('../../src/localities/localities.bin', import.meta.url)),
    log: serviceLog('info', nowhere),
  });
  app.post('/bare', async (request) => {
    read(forecastBodySchema, request.body);
    return { read: true };
  });
  await app.ready();
  return app;
}

/** CPU per request [ms], the process's own and the system's for it, over n requests one after another. */
async function cpuMs(app: FastifyInstance, url: string, body: string, n: number): Promise<number> {
  const before = process.cpuUsage();
  for (let i = 0; i < n; i++) {
    const answer = await app.inject({ method: 'POST', url, headers: { 'content-type': 'application/json' }, body });
    if (answer.statusCode !== 200) throw new Error(answer.body);
  }
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / n;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

async function compare(
  app: FastifyInstance,
  name: string,
  question: object,
  n: number,
  mostMs: number,
): Promise<{ within: boolean; beyondMs: number }> {
  const body = JSON.stringify(question);
  const bare: number[] = [];
  const full: number[] = [];
  await cpuMs(app, '/bare', body, n);
  await cpuMs(app, '/v1/forecasts', body, n);
  for (let round = 0; round < ROUNDS; round++) {
    bare.push(await cpuMs(app, '/bare', body, n));
    full.push(await cpuMs(app, '/v1/forecasts', body, n));
  }
  const [bareMs, fullMs] = [median(bare), median(full)];
  const beyondMs = fullMs - bareMs;
  const within = beyondMs <= mostMs;
  process.stdout.write(
    `${name}: ${beyondMs.toFixed(3)} ms of CPU beyond the bare route (at most ${mostMs.toFixed(1)}): ${within ? 'within' : 'OVER'}\n` +
      `  bare route ${bareMs.toFixed(3)} ms, forecast ${fullMs.toFixed(3)} ms, ratio ${(fullMs / bareMs).toFixed(1)}\n`,
  );
  return { within, beyondMs };
}

const app = await startApp();
const coolDays = await compare(app, 'a cool week of daily min and max', coolWeek, 400, 1);
const results = [
  coolDays,
  await compare(app, 'the same week under parsnip, the slowest crop', { ...coolWeek, crop: 'parsnip' }, 400, 1),
  await compare(app, 'a fortnight of hourly readings with a hot spell', hotFortnight, 60, 25),
  // At most 15 ms beyond a forecast from soil readings.
  await compare(app, 'sixty days of air', sixtyDaysOfAir, 60, 15 + coolDays.beyondMs),
];
await app.close();
if (results.some(({ within }) => !within)) process.exitCode = 1;
