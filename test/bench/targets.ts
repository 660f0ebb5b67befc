/**
 * Every target of speed and memory, measured on the built service as it ships, and told as within or over.
 *
 * `--strict` ends with 1 where a target is missed. Costs are CPU time of the service's process with all its threads.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays } from '../../src/basics/calendar.js';
import { type CostOptions, costOf, median, type Row, scaled, tableOf } from './cost.js';
import { fairness } from './fairness.js';
import { fixedWorkMs, REFERENCE_MS } from './fixed-work.js';
import { coolWeek, hotFortnight, minuteFiles, pandasScript, thirtyYearsOfSoil, yearOfMinutes } from './questions.js';
import { requestsASecond } from './requests-a-second.js';
import { type Asked, type Beside, startBeside } from './run-beside.js';
import { apiKeys, headersOf, keepGarden, type OwnerName, owners, sowingId, today } from './test-garden.js';

const folder = mkdtempSync(join(tmpdir(), 'targets-'));
const rows: Row[] = [];
const ann = headersOf('ann');

const start = (): Promise<Beside> =>
  startBeside(['dist/main.js'], {
    API_KEYS: apiKeys,
    RATE_LIMIT: '0',
    WORK_LIMIT: '0',
    DATABASE_URL: `sqlite:${join(folder, 'garden.db')}`,
  });

/** Measures one line; what fails is told in its place, and the others go on. */
async function row(
  name: string,
  [target, goal]: readonly [target: number | null, goal: number | null],
  measure: () => Promise<number>,
  unit: Row['unit'] = 'ms',
): Promise<void> {
  process.stderr.write(`${name} …\n`);
  const line = await measure().then(
    (measured) => ({ name, unit, measured, target, goal }),
    (error: Error) => ({ name, unit, measured: null, target, goal, note: error.message.slice(0, 160) }),
  );
  rows.push(line);
}

const readyMs = async (service: Beside): Promise<number> => {
  await service.ask({ path: '/readyz' });
  return service.cpuMs();
};

try {
  let service = await start();
  await keepGarden(service);
  await service.ask({ path: '/v1/beds/thirty-open/sowing-windows?crop=lettuce', headers: ann });
  await service.stop();

  const starts: number[] = [];
  const rests: number[] = [];
  for (let i = 0; i < 3; i++) {
    service = await start();
    starts.push(await scaled(() => readyMs(service)));
    await new Promise((done) => setTimeout(done, 2000));
    rests.push(service.memoryMB());
    if (i < 2) await service.stop();
  }

  const costs = (name: string, limits: readonly [number, number], asked: (n: number) => Asked, options?: CostOptions) =>
    row(name, limits, () => costOf(service, (n) => service.ask(asked(n)), options));
  const get = (path: string, leastBytes = 5000, headers: Record<string, string> = ann): Asked => ({
    path,
    headers,
    leastBytes,
  });
  const post = (path: string, body: object, leastBytes: number): Asked => ({
    method: 'POST',
    path,
    body,
    headers: ann,
    leastBytes,
  });

  const bare = await startBeside(['--import', 'tsx', 'test/bench/bare-app.ts'], {});
  const bareAsked: Asked = { method: 'POST', path: '/', body: coolWeek };
  rows.push({
    name: 'a bare fastify + zod app takes the same week',
    unit: 'ms',
    measured: await costOf(bare, () => bare.ask(bareAsked), { warmUp: 4000 }),
    target: null,
    goal: null,
  });
  await costs('POST a week of min and max', [1, 0.3], () => post('/v1/forecasts', coolWeek, 5000), { warmUp: 4000 });
  await costs('POST a fortnight by the hour, hot', [5, 2.5], () => post('/v1/forecasts', hotFortnight, 5000), {
    warmUp: 300,
  });

  const forecast = (years: string, n: number): Asked =>
    get(`/v1/beds/${years}-open/forecast?crop=lettuce&sowing=${addDays(today, -(n % 10))}&seeds=${100 + n}`);
  for (const [years, limits] of [
    ['fifteen', [60, 25]],
    ['thirty', [90, 35]],
  ] as const) {
    await costs(`GET kept forecast, ${years} years, a new question`, limits, (n) => forecast(years, n), { warmUp: 12 });
  }
  await costs('GET kept forecast, the same question again', [3, 1], () => forecast('fifteen', 0));
  for (const years of ['fifteen', 'thirty']) {
    const path = `/v1/sowings/${sowingId(`${years}-open`, 'lettuce')}`;
    await costs(`GET sowing, unchanged, ${years} years`, [3, 1], () => get(path));
  }
  const counted = `/v1/sowings/${sowingId('thirty-open', 'carrot')}`;
  await costs('GET sowing, unchanged, counted, thirty years', [3, 1], () => get(counted));
  await row('GET sowing with If-None-Match', [2, 0.6], async () => {
    const { headers } = await service.ask(get(counted));
    const again = { path: counted, headers: { ...ann, 'if-none-match': String(headers.etag) }, status: 304 };
    return costOf(service, () => service.ask(again));
  });
  for (const years of ['fifteen', 'thirty']) {
    const path = `/v1/beds/${years}-open/sowing-windows?crop=lettuce`;
    await costs(`GET sowing windows, repeated, ${years} years`, [4, 1.5], () => get(path, 50_000));
  }
  const newCrops = ['spinach', 'pea', 'beet', 'turnip', 'cabbage'];
  for (const [years, limits] of [
    ['fifteen', [60, 30]],
    ['thirty', [100, 50]],
  ] as const) {
    await row(`GET sowing windows of a crop not asked before, ${years} years`, limits, () =>
      scaled(async () => {
        const before = service.cpuMs();
        for (const crop of newCrops) {
          await service.ask(get(`/v1/beds/${years}-raised/sowing-windows?crop=${crop}`, 50_000));
        }
        return (service.cpuMs() - before) / newCrops.length;
      }),
    );
  }
  await costs(
    'POST soil, 30 years by the day',
    [800, 500],
    (n) => post('/v1/soil-temperatures', thirtyYearsOfSoil(n), 500_000),
    {
      rounds: 3,
      warmUp: 1,
    },
  );

  for (const file of minuteFiles) {
    await row(
      `525,600 rows of CSV over HTTP, beside pandas (${file.name})`,
      [0.6, 0.25],
      async () => {
        const body = yearOfMinutes(file);
        const path = join(folder, 'year.csv');
        writeFileSync(path, body);
        const headers = { ...ann, 'content-type': 'text/csv' };
        const asked = {
          method: 'POST' as const,
          path: '/v1/readings/check?medium=soil&timeZone=Etc/GMT%2B2',
          headers,
          body,
          leastBytes: 20_000,
        };
        const ours = await costOf(service, () => service.ask(asked), { rounds: 3, warmUp: 1 });
        return ours / (await scaled(async () => pandasMs(pandasScript(file), path)));
      },
      'x',
    );
  }

  const cookieOf = async (owner: OwnerName): Promise<Record<string, string>> => {
    const { headers } = await service.ask({
      method: 'POST',
      path: '/session',
      headers: { origin: service.address },
      body: { key: owners[owner].key },
      status: 204,
    });
    return { cookie: String(headers['set-cookie']).split(';')[0]! };
  };
  const [annsCookie, bensCookie] = [await cookieOf('ann'), await cookieOf('ben')];
  await costs('page as it opens, garden kept', [40, 10], () => get('/', 10_000, annsCookie));
  await costs('page, what is growing, 8 sowings', [200, 60], () => get('/?view=growing', 50_000, bensCookie), {
    rounds: 3,
    warmUp: 1,
  });
  await costs('page, what is growing, 16 sowings', [400, 120], () => get('/?view=growing', 100_000, annsCookie), {
    rounds: 3,
    warmUp: 1,
  });
  await costs('GET /openapi.json', [1.5, 0.5], () => get('/openapi.json', 100_000));
  await costs('GET /v1/crops', [0.2, 0.1], () => get('/v1/crops', 40_000), { warmUp: 300 });

  await row(
    'another owner’s big questions beside 40 of one owner, as long as alone',
    [2, null],
    () => fairness(service),
    'x',
  );
  const throughput = await requestsASecond({ service, bare, today });
  await bare.stop();
  rows.push({ name: 'memory after all of this', unit: 'MB', measured: service.memoryMB(), target: 320, goal: 220 });
  await service.stop();
  rows.push({ name: 'memory at rest', unit: 'MB', measured: median(rests), target: 160, goal: 110 });
  rows.push({ name: 'start to ready', unit: 's', measured: median(starts) / 1000, target: 1.2, goal: 0.5 });

  await row('GET sowing windows, the first question after a restart, thirty years', [200, 60], async () => {
    const firsts: number[] = [];
    for (let i = 0; i < 3; i++) {
      service = await start();
      await service.ask({ path: '/readyz' });
      const asked = get('/v1/beds/thirty-open/sowing-windows?crop=lettuce', 50_000);
      firsts.push(
        await scaled(async () => {
          const before = service.cpuMs();
          await service.ask(asked);
          return service.cpuMs() - before;
        }),
      );
      await service.stop();
    }
    return median(firsts);
  });

  const { text, over } = tableOf(rows);
  process.stdout.write(
    `\nCPU of the service’s process, all threads, as on a machine where the fixed work takes ${REFERENCE_MS} ms; it took ${fixedWorkMs().toFixed(0)} ms here.\n\n`,
  );
  process.stdout.write(
    `${text}\nRequests a second, ten connections, by the clock on the wall:\n${tableOf(throughput).text}`,
  );
  process.stdout.write(
    `\n${over === 0 ? 'All within.' : `${over} of ${rows.filter(({ target }) => target !== null).length} over or not measured.`}\n`,
  );
  if (over > 0 && process.argv.includes('--strict')) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}

function pandasMs(script: string, path: string): number {
  for (const python of ['python3', '/usr/bin/python3']) {
    try {
      return Number(execFileSync(python, ['-c', script, path], { stdio: ['ignore', 'pipe', 'ignore'] }));
    } catch {}
  }
  throw new Error('pandas is not installed here (Debian: python3-pandas)');
}
