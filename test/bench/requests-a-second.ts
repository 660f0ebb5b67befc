import { Pool } from 'undici';
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import type { Row } from './cost.js';
import { coolWeek } from './questions.js';
import type { Beside } from './run-beside.js';
import { headersOf } from './test-garden.js';

/** Five of each owner: an owner may not have many more questions at once. */
const CONNECTIONS_OF_EACH = 5;
const FOR_MS = 3000;

interface Load {
  readonly name: string;
  readonly of: Beside;
  readonly method?: 'GET' | 'POST';
  readonly path: (number: number) => string;
  readonly body?: string;
}

/** How many requests a second are answered, with ten connections for three seconds each. */
export async function requestsASecond({
  service,
  bare,
  today,
}: {
  service: Beside;
  bare: Beside;
  today: PlainDate;
}): Promise<Row[]> {
  const body = JSON.stringify(coolWeek);
  const get = (name: string, path: string): Load => ({ name, of: service, path: () => path });
  const loads: Load[] = [
    { name: 'bare fastify + zod, a week', of: bare, method: 'POST', path: () => '/', body },
    get('/healthz', '/healthz'),
    get('GET a bed', '/v1/beds/fifteen-open'),
    get('GET /v1/crops', '/v1/crops'),
    { name: 'POST a week of min and max', of: service, method: 'POST', path: () => '/v1/forecasts', body },
    get('GET /openapi.json', '/openapi.json'),
    {
      name: 'GET kept forecast, new questions',
      of: service,
      path: (n) => `/v1/beds/fifteen-open/forecast?crop=lettuce&sowing=${addDays(today, -(n % 10))}&seeds=${5000 + n}`,
    },
    get('GET kept forecast, the same question', `/v1/beds/fifteen-open/forecast?crop=lettuce&sowing=${today}`),
    get('GET sowing windows, repeated', '/v1/beds/fifteen-open/sowing-windows?crop=lettuce'),
    get('GET sowing, unchanged', '/v1/sowings/fifteen-open-lettuce'),
  ];
  const rows: Row[] = [];
  for (const load of loads) {
    process.stderr.write(`requests a second: ${load.name} …\n`);
    const { answered, refused, seconds, cpuMs } = await under(load);
    const note = `${(cpuMs / Math.max(1, answered)).toFixed(2)} ms of CPU each${refused > 0 ? `; ${refused} refused` : ''}`;
    rows.push({ name: load.name, unit: '/s', measured: answered / seconds, target: null, goal: null, note });
  }
  return rows;
}

async function under({ of, method = 'GET', path, body }: Load) {
  const pool = new Pool(of.address, { connections: 2 * CONNECTIONS_OF_EACH, pipelining: 1, headersTimeout: 120_000 });
  let [answered, refused, number] = [0, 0, 0];
  const cpuBefore = of.cpuMs();
  const started = performance.now();
  const asking = async (owner: 'ann' | 'ben'): Promise<void> => {
    const headers = { ...headersOf(owner), ...(body ? { 'content-type': 'application/json' } : {}) };
    while (performance.now() - started < FOR_MS) {
      const answer = await pool.request({ method, path: path(number++), headers, body: body ?? null });
      await answer.body.dump({ limit: 10_000_000 });
      if (answer.statusCode === 200) answered++;
      else refused++;
    }
  };
  await Promise.all(
    (['ann', 'ben'] as const).flatMap((owner) => Array.from({ length: CONNECTIONS_OF_EACH }, () => asking(owner))),
  );
  const seconds = (performance.now() - started) / 1000;
  await pool.close();
  return { answered, refused, seconds, cpuMs: of.cpuMs() - cpuBefore };
}
