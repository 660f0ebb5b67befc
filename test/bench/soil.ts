import type { SoilQuestion } from '../../src/answers/soil/soil-temperatures.js';
import type { PlainDate } from '../../src/basics/calendar.js';

// What is measured is what ships: the built code.
const built = (file: string): string => new URL(`../../dist/${file}`, import.meta.url).href;
const { soilRecord } = (await import(
  built('answers/soil/soil-record.js')
)) as typeof import('../../src/answers/soil/soil-record.js');
const { defaultBed } = (await import(built('answers/question.js'))) as typeof import('../../src/answers/question.js');
const { readSeries } = (await import(
  built('readings/read-series.js')
)) as typeof import('../../src/readings/read-series.js');
const { addDays, findZone, startOfDay } = (await import(
  built('basics/calendar.js')
)) as typeof import('../../src/basics/calendar.js');

const { pastSoil, pastSoils } = (await import(
  built('answers/ahead/past-soil.js')
)) as typeof import('../../src/answers/ahead/past-soil.js');

const ROUNDS = 3;
const zone = findZone('Etc/GMT+2')!;
const site = { zone, latitude: 44, longitude: -30, annualRainMm: 800 };

/** Years of daily extremes: seasons, weather, and winters with frost. */
function airOf(years: number) {
  const first = '1997-01-01' as PlainDate;
  const daily = Array.from({ length: Math.round(365.25 * years) }, (_, day) => {
    const level =
      8 - 11 * Math.cos((2 * Math.PI * (day - 20)) / 365.25) + 4 * Math.sin(day / 3.1) + 2 * Math.sin(day * 1.7);
    return { date: addDays(first, day), min: level - 5 - Math.sin(day * 0.9), max: level + 5 + Math.sin(day * 1.3) };
  });
  return { series: readSeries({ medium: 'air', unit: 'C', daily }, zone, []), first, days: daily.length };
}

/** CPU time of a piece of work [ms]. */
function cpuMs(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Hours of soil at one depth, from the series as read: the work of a question, without its JSON [ms]. */
function hourlyMs({ series, first, days }: ReturnType<typeof airOf>, cover: SoilQuestion['bed']['cover']): number {
  const startMs = startOfDay(first, zone);
  const wanted = { phaseMs: startMs, fromMs: startMs, toMs: startOfDay(addDays(first, days), zone) };
  let hourlyC: Float64Array = new Float64Array();
  const ms = cpuMs(() => {
    ({ hourlyC } = soilRecord([series], { site, bed: { ...defaultBed, cover }, depthCm: 1.3 }, wanted));
  });
  if (hourlyC.length !== 24 * days || hourlyC.some(Number.isNaN)) throw new Error('hours are missing');
  return ms;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;
const LIMIT_MS = 1500;
const LINEAR = 1.3;

let within = true;
for (const cover of ['bare', 'grass'] as const) {
  const contestants = [3, 30].map((years) => ({ years, air: airOf(years), ms: [] as number[] }));
  for (let round = 0; round < ROUNDS; round++) {
    for (const { air, ms } of contestants) ms.push(hourlyMs(air, cover));
  }
  const [threeMs, thirtyMs] = contestants.map(({ ms }) => median(ms)) as [number, number];
  const isWithin = thirtyMs <= LIMIT_MS && thirtyMs / threeMs <= 10 * LINEAR;
  within &&= isWithin;
  process.stdout.write(
    `30 years by the hour at one depth from daily min and max, ${cover}: ${thirtyMs.toFixed(0)} ms of CPU (at most ${LIMIT_MS}); ` +
      `ten times the years take ${(thirtyMs / threeMs).toFixed(1)} times as long: ${isWithin ? 'within' : 'OVER'}\n`,
  );
}

/** Past soil at all depths at which crops are sown may cost so many times that at one. */
const MAX_TIMES_ONE_DEPTH = 2;
const bedding = { site, bed: defaultBed, depthCm: 1.3 };
const { series: air } = airOf(30);
const [one, all] = [pastSoil, pastSoils].map((find) => {
  const ms = Array.from({ length: ROUNDS }, () => cpuMs(() => find([air], bedding, 0)));
  return median(ms);
}) as [number, number];
const isCheap = all / one <= MAX_TIMES_ONE_DEPTH;
within &&= isCheap;
process.stdout.write(
  `30 past years at ${pastSoils([air], bedding, 0).depthsCm.length} depths: ${all.toFixed(0)} ms of CPU, ${(all / one).toFixed(1)} times one depth ` +
    `(at most ${MAX_TIMES_ONE_DEPTH}): ${isCheap ? 'within' : 'OVER'}\n`,
);
if (!within) process.exitCode = 1;
