import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { median } from './cost.js';
import { fixedWorkMs, REFERENCE_MS } from './fixed-work.js';
import { type Beside, startBeside } from './run-beside.js';
import type { Costs, UnitCost } from './scale-simulation.js';
import { airOf, keepSmallGarden, owners, sourceDays, sowingId, sowings, today } from './test-garden.js';

/** The first warms the code up; of each of the others a cost is measured once, as nobody looked at its garden before. */
const OWNERS = ['warm', 'first-a', 'first-b', 'first-c', 'look-a', 'look-b', 'look-c'] as const;
type Owner = (typeof OWNERS)[number];
const keyOf = (owner: Owner): string => `bench-key-of-${owner}`;
const headersOf = (owner: Owner): Record<string, string> => ({ authorization: `Bearer ${keyOf(owner)}` });
const BEDS = owners.ben.beds;

/** What each thing costs, measured on the built service with gardens of 15 years of air, two beds and eight sowings. */
export async function measuredCosts(): Promise<Costs> {
  const folder = mkdtempSync(join(tmpdir(), 'scale-'));
  const start = (): Promise<Beside> =>
    startBeside(['dist/main.js'], {
      API_KEYS: OWNERS.map((owner) => `${owner}:${keyOf(owner)}`).join(),
      RATE_LIMIT: '0',
      WORK_LIMIT: '0',
      DATABASE_URL: `sqlite:${join(folder, 'gardens.db')}`,
    });
  const diskKB = (): number =>
    readdirSync(folder).reduce((sum, file) => sum + statSync(join(folder, file)).size, 0) / 1024;
  try {
    let service = await start();
    const emptyKB = diskKB();
    for (const owner of OWNERS) await keepSmallGarden(service, headersOf(owner));
    for (const owner of OWNERS) await lookAt(service, owner);
    await service.stop();
    const gardenKB = (diskKB() - emptyKB) / OWNERS.length;

    service = await start();
    await service.ask({ path: '/readyz' });
    const restMB = service.memoryMB();
    for (let i = 0; i < 4; i++) {
      await tellComing(service, 'warm', 10 + i);
      await lookAt(service, 'warm');
      await sowingsOf(service, 'warm');
    }
    const firsts: UnitCost[] = [];
    const backgrounds: UnitCost[] = [];
    for (const owner of OWNERS) {
      if (owner === 'warm') continue;
      // A new day: nothing that was answered before holds any more, but past soil does.
      await tellComing(service, owner, 20);
      if (owner.startsWith('first')) firsts.push(await unit(service, 1, () => lookAt(service, owner)));
      else backgrounds.push(await unit(service, 1, () => sowingsOf(service, owner)));
    }
    const furtherLook = await unit(service, 5, () => lookAt(service, 'warm'));
    const { text: bed } = await service.ask({ path: `/v1/beds/${BEDS[0]}`, headers: headersOf('warm') });
    const calendarPath = new URL((JSON.parse(bed) as { calendarUrl: string }).calendarUrl, service.address);
    const calendarAsked = { path: calendarPath.pathname + calendarPath.search };
    await service.ask(calendarAsked);
    const calendar = await unit(service, 100, () => service.ask(calendarAsked));
    const source = await unit(service, 10, async (n) => {
      const body = { medium: 'air', daily: sourceDays(n).measured };
      await service.ask({ method: 'POST', path: '/v1/places/fifteen/air', body, headers: headersOf('warm') });
      await tellComing(service, 'warm', 30 + n);
    });
    const writtenBefore = service.writtenBytes();
    const roundsMs: number[] = [];
    const units: UnitCost[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const started = performance.now();
      units.push(await unit(service, READINGS, (n) => postReading(service, round * READINGS + n)));
      roundsMs.push(performance.now() - started);
    }
    const reading = middle(units);
    const readingKB = (service.writtenBytes() - writtenBefore) / (ROUNDS * READINGS) / 1024;
    // By the clock on the wall, so of the round that others disturbed least.
    const commitsASecond = (1000 * READINGS) / Math.min(...roundsMs);
    const beforeSource = service.writtenBytes();
    await service.ask({
      method: 'POST',
      path: '/v1/places/fifteen/air',
      body: {
        medium: 'air',
        daily: airOf(1)
          .slice(-60)
          .map((day) => ({ ...day, max: day.max + 1 })),
      },
      headers: headersOf('look-b'),
    });
    const sourceKB = (service.writtenBytes() - beforeSource) / 1024;
    const bodies = await Promise.all(
      [...lookPaths(), windowsPath].map(async (path) => service.ask({ path, headers: headersOf('warm') })),
    );
    const answersKB = bodies.reduce((sum, { text }) => sum + text.length + gzipSync(text).length, 0) / 1024;
    await service.stop();
    const rounded = (value: number): number => Number(value.toPrecision(3));
    const costs = {
      firstLook: middle(firsts),
      furtherLook,
      backgroundLook: middle(backgrounds),
      reading,
      calendar,
      source,
      readingKB: rounded(readingKB),
      sourceKB: rounded(sourceKB),
      commitsASecond: rounded(commitsASecond),
      answersKB: rounded(answersKB),
      // A day of air as typed columns: a date, and its lowest, mean and highest.
      seriesKB: rounded((15 * 365 * 4 * 8) / 1024),
      diskKB: rounded(gardenKB),
      restMB: Math.round(restMB),
    };
    return costs;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const lookPaths = (): string[] =>
  BEDS.flatMap((bed) => sowings.map(({ name }) => `/v1/sowings/${sowingId(bed, name)}`));
const windowsPath = `/v1/beds/${BEDS[0]}/sowing-windows?crop=lettuce`;

const sowingsOf = async (service: Beside, owner: Owner): Promise<void> => {
  for (const path of lookPaths()) await service.ask({ path, headers: headersOf(owner), leastBytes: 5000 });
};

/** What a grower looks at: the leaf of what is growing, and when to sow one crop. */
async function lookAt(service: Beside, owner: Owner): Promise<void> {
  const { headers } = await service.ask({
    method: 'POST',
    path: '/session',
    headers: { origin: service.address },
    body: { key: keyOf(owner) },
    status: 204,
  });
  const cookie = String(headers['set-cookie']).split(';')[0]!;
  await service.ask({ path: '/?view=growing', headers: { cookie }, leastBytes: 50_000 });
  await service.ask({ path: windowsPath, headers: headersOf(owner), leastBytes: 50_000 });
}

const tellComing = async (service: Beside, owner: Owner, number: number): Promise<void> => {
  const body = { medium: 'air', origin: 'forecast', daily: sourceDays(number).coming };
  await service.ask({ method: 'PUT', path: '/v1/places/fifteen/coming-days', body, headers: headersOf(owner) });
};

/** Posts, in each of so many rounds. */
const READINGS = 60;
const ROUNDS = 6;

const postReading = (service: Beside, number: number) =>
  service.ask({
    method: 'POST',
    path: `/v1/beds/${BEDS[0]}/readings`,
    body: { medium: 'soil', probeDepthCm: 5, readings: readingsOf(number) },
    headers: headersOf('look-a'),
  });

/** What a probe sends in one go; every number another minute. */
const readingsOf = (number: number): { at: string; value: number }[] =>
  [0, 30].map((second) => ({
    at: `${today}T0${Math.floor(number / 60)}:${String(number % 60).padStart(2, '0')}:${String(second).padStart(2, '0')}-02:00`,
    value: 12,
  }));

/** What one of several costs the thread that answers, and the others, on a quiet machine [ms]. */
async function unit(service: Beside, times: number, ask: (number: number) => Promise<unknown>): Promise<UnitCost> {
  const speedBefore = fixedWorkMs();
  const [main, all] = [service.mainMs(), service.cpuMs()];
  for (let i = 0; i < times; i++) await ask(i);
  const [mainMs, allMs] = [service.mainMs() - main, service.cpuMs() - all];
  const scale = REFERENCE_MS / ((speedBefore + fixedWorkMs()) / 2) / times;
  const rounded = (ms: number): number => Number((ms * scale).toPrecision(3));
  return { mainMs: rounded(mainMs), workMs: rounded(allMs - mainMs) };
}

const middle = (units: readonly UnitCost[]): UnitCost => ({
  mainMs: median(units.map(({ mainMs }) => mainMs)),
  workMs: median(units.map(({ workMs }) => workMs)),
});
