/**
 * A kept bed's forecast from the built code, its past soil known: against its target, and its ensemble beside the plain
 * form of it in the tests, which has to give the same. CPU time, for who shares the machine.
 */
import type { Question } from '../../src/answers/question.js';
import { addDays, findZone, type PlainDate } from '../../src/basics/calendar.js';
import { ensembleSlowly } from '../unit/answers/ensemble-slowly.js';
import { airOfYears } from '../unit/answers/make-air.js';

// What is measured is what ships: the built code.
const built = (file: string): string => new URL(`../../dist/${file}`, import.meta.url).href;
const { forecast } = (await import(
  built('answers/forecast/forecast.js')
)) as typeof import('../../src/answers/forecast/forecast.js');
const { ensembleOf } = (await import(
  built('answers/ahead/ensemble.js')
)) as typeof import('../../src/answers/ahead/ensemble.js');
const { pastSoil } = (await import(
  built('answers/ahead/past-soil.js')
)) as typeof import('../../src/answers/ahead/past-soil.js');
const { defaultBed } = (await import(built('answers/question.js'))) as typeof import('../../src/answers/question.js');
const { seedOf } = (await import(
  built('answers/forecast/seed-of.js')
)) as typeof import('../../src/answers/forecast/seed-of.js');
const { crops } = (await import(built('germination/crops.js'))) as typeof import('../../src/germination/crops.js');

const ROUNDS = 12;
const MAX_MS = { 15: 60, 30: 90 } as const;
/** The fast form takes at most so much of the plain one's time, as measured with room for a busy machine. */
const MAX_SHARE = 0.8;
const MEMBER_HOURS = 24 * 35;
/** Two forms of one sum round differently [h]. */
const ROUNDING_H = 1e-6;

const zone = findZone('Europe/Berlin')!;
const site = { zone, latitude: 50, longitude: 10, annualRainMm: 700 };

function timed<T>(work: () => T): { ms: number; result: T } {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return { ms: (user + system) / 1000, result };
}
const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

function questionOf(years: 15 | 30, sownAgo: number): Question {
  const air = airs[years];
  return {
    ...{ site, bed: defaultBed, series: [air], understood: [], normals: null, crop: crops.get('lettuce')!, lot: null },
    ...{ timeFactor: null, standFactor: null, learned: null, countDays: null, beyond: null, zoneFromStamps: false },
    sowing: { date: addDays(air.days.at(-1)!.date, -sownAgo), time: '12:00', depthCm: null, seeds: 100 },
  };
}
const airs = {
  15: airOfYears('2010-05-20' as PlainDate, 15, zone),
  30: airOfYears('1995-05-20' as PlainDate, 30, zone),
};

let within = true;
const tell = (text: string, isWithin: boolean): void => {
  within &&= isWithin;
  process.stdout.write(`${text}: ${isWithin ? 'within' : 'OVER'}\n`);
};

for (const years of [15, 30] as const) {
  const first = questionOf(years, 0);
  const past = pastSoil(first.series, { site, bed: defaultBed, depthCm: first.crop.sowingDepthCm! }, 0);
  const ms: number[] = [];
  for (let round = 0; round < 2 * ROUNDS; round++) {
    const one = timed(() => forecast(questionOf(years, round % ROUNDS), () => past));
    if (round >= ROUNDS) ms.push(one.ms);
  }
  const middle = median(ms);
  tell(
    `a forecast of lettuce from ${years} past years, their soil known: ${middle.toFixed(0)} ms of CPU (at most ${MAX_MS[years]})`,
    middle <= MAX_MS[years],
  );
}

const traces = Array.from({ length: 150 }, (_, year) =>
  Float64Array.from({ length: MEMBER_HOURS }, (_, hour) => {
    const weather = 2 * Math.sin(1.7 * year) + 2 * Math.sin(hour / 37 + year);
    return 11 + hour / 200 + weather + 6 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
  }),
);
const doubtK = new Float64Array(MEMBER_HOURS).fill(1.5);
for (const id of ['lettuce', 'onion', 'carrot']) {
  const seed = seedOf({ ...questionOf(15, 0), crop: crops.get(id)! });
  const [ours, plain]: [number[], number[]] = [[], []];
  // In turn, so that whatever else the machine does falls on both alike.
  for (let round = 0; round < ROUNDS; round++) {
    const [fast, slow] = [
      timed(() => ensembleOf(seed, traces, doubtK)!),
      timed(() => ensembleSlowly(seed, traces, doubtK)!),
    ];
    const isSame = fast.result.middle.upAtH.every(
      (hours, j) =>
        Math.abs(hours - slow.result.middle.upAtH[j]!) < ROUNDING_H || hours === slow.result.middle.upAtH[j],
    );
    if (!isSame) throw new Error(`the plain form has other times for ${id}`);
    ours.push(fast.ms);
    plain.push(slow.ms);
  }
  const share = median(ours) / median(plain);
  tell(
    `${3 * traces.length} members of ${id} over ${MEMBER_HOURS} hours: ${median(ours).toFixed(0)} ms of CPU, ${share.toFixed(2)} of the plain form's ${median(plain).toFixed(0)} with the same times (at most ${MAX_SHARE})`,
    share <= MAX_SHARE,
  );
}
if (!within) process.exitCode = 1;
