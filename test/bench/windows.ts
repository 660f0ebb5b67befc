import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { SowingOutcomes } from '../../src/germination/many/all-sowings.js';
import type { Seed } from '../../src/germination/run/cohorts.js';

// What is measured is what ships: the built code.
const built = (file: string): string => new URL(`../../dist/germination/${file}`, import.meta.url).href;
const { allSowings } = (await import(
  built('many/all-sowings.js')
)) as typeof import('../../src/germination/many/all-sowings.js');
const { hourlyProgress, medianSpeed } = (await import(
  built('run/hourly-pace.js')
)) as typeof import('../../src/germination/run/hourly-progress.js');
const { roomForSums } = (await import(
  built('many/running-sums.js')
)) as typeof import('../../src/germination/many/running-sums.js');
const { crops } = (await import(built('crops.js'))) as typeof import('../../src/germination/crops.js');
const { germinationCurve } = (await import(
  built('curve/curve.js')
)) as typeof import('../../src/germination/curve/curve.js');

const { straightPieces } = (await import(
  built('curve/straight-pieces.js')
)) as typeof import('../../src/germination/curve/straight-pieces.js');

/** Steps of the table of speeds that numpy is handed: so fine that straight lines between them tell no other times. */
const SPEEDS = 2 ** 17;
const ROUNDS = 15;
const WARM_UP = 5;
const MOST_MS = 60;
const LEAST_TIMES = 5;
const YEARS = 30;
const SEASON_DAYS = 260;
/** Sown at nine on 15 February and every day after. */
const FIRST_SOWING_H = 24 * 45 + 9;
const WITHIN_H = 24 * 120;
const YEAR_H = 365 * 24;

/** Thirty years and the count of the last sowing: seasons, spells of weather, days and nights. */
const hourlyC = Float64Array.from({ length: YEARS * YEAR_H + WITHIN_H }, (_, hour) => {
  const day = (hour + 0.5) / 24;
  const spells = 3 * Math.sin(day / 1.43) + 2 * Math.sin(day / 3.7 + 1) + Math.sin(day * 1.7);
  return 14 - 12 * Math.cos((2 * Math.PI * (day - 25)) / 365) + spells + 6 * Math.sin((2 * Math.PI * (hour - 8)) / 24);
});
const sowH = Int32Array.from(
  { length: YEARS * SEASON_DAYS },
  (_, i) => FIRST_SOWING_H + YEAR_H * Math.floor(i / SEASON_DAYS) + 24 * (i % SEASON_DAYS),
);

function seedOf(id: string): Seed {
  const { rows, soil, hotThresholdC, chillingSensitive, sigmaLog10 } = crops.get(id)!;
  const curve = germinationCurve(rows, soil?.maximumC ?? null, 0);
  return { curve, hotThresholdC, chillingSensitive, sigmaLog10, timeFactor: 1 };
}

/** All that a window asks of every sowing, the clocks of heat and cold included; CPU time, for who shares the machine. */
function timed(seed: Seed): { ms: number; outcomes: SowingOutcomes } {
  const before = process.cpuUsage();
  const outcomes = allSowings(seed, hourlyC, sowH, { withinH: WITHIN_H, viablePercent: 100 });
  const { user, system } = process.cpuUsage(before);
  return { ms: (user + system) / 1000, outcomes };
}

type Emergence = Pick<SowingOutcomes, 'up' | 'firstH' | 'halfH' | 'mostH'>;

/** A python that has numpy. */
const python = ['python3', '/usr/bin/python3'].find((name) => spawnSync(name, ['-c', 'import numpy']).status === 0);

/**
 * Emergence by numpy, from the same hourly temperatures and the same curve, handed over as numbers. It follows no clock
 * of heat, which ours does.
 */
async function besideNumpy(seed: Seed, runOurs: () => void): Promise<{ ms: number[]; emergence: Emergence }> {
  const folder = mkdtempSync(join(tmpdir(), 'windows-'));
  try {
    const { due } = roomForSums(seed, hourlyProgress(seed, hourlyC, 0, 0), 0);
    const { fromC, rate, share } = straightPieces(seed.curve);
    const speedOf = medianSpeed(seed.sigmaLog10);
    const given = {
      hourly: hourlyC,
      bends: Float64Array.of(...fromC, ...rate.map((perDay) => perDay / 24 / seed.timeFactor), ...share),
      speed: Float64Array.from({ length: SPEEDS + 1 }, (_, i) => speedOf(i / SPEEDS)),
      due: due.subarray(1),
      sow: sowH,
      within: Int32Array.of(WITHIN_H),
    };
    for (const [name, values] of Object.entries(given)) writeFileSync(join(folder, name), values);
    const child = spawn(python!, [new URL('windows.py', import.meta.url).pathname, folder], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const closed = once(child, 'close');
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    const ms: number[] = [];
    // In turn, so that whatever else the machine does falls on both alike.
    for (let round = 0; round < ROUNDS; round++) {
      runOurs();
      child.stdin.write('again\n');
      ms.push(Number((await lines.next()).value));
    }
    child.stdin.end();
    await closed;
    return { ms, emergence: emergenceIn(folder) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function emergenceIn(folder: string): Emergence {
  const bytes = (name: string) => new Uint8Array(readFileSync(join(folder, name)));
  const hours = (name: string) => new Float64Array(bytes(name).buffer);
  return { up: bytes('up'), firstH: hours('first'), halfH: hours('half'), mostH: hours('most') };
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

/** What is not the same in both: stands, and times by more than their rounding [h]. */
const ROUNDING_H = 1e-6;
const areSame = (ours: SowingOutcomes, theirs: Emergence): boolean =>
  ours.known.every((isKnown) => isKnown === 1) &&
  ours.up.every((up, i) => up === theirs.up[i]) &&
  (['firstH', 'halfH', 'mostH'] as const).every((name) =>
    ours[name].every((hours, i) => ours.up[i] === 0 || Math.abs(hours - theirs[name][i]!) <= ROUNDING_H),
  );

if (!python)
  process.stdout.write('numpy is not installed here: sowings are not set beside it (Debian: python3-numpy)\n');
let within = true;
for (const id of ['lettuce', 'onion', 'carrot', 'tomato', 'spinach']) {
  const seed = seedOf(id);
  const { outcomes } = timed(seed);
  const ours: number[] = [];
  const runOurs = () => ours.push(timed(seed).ms);
  for (let round = 0; round < WARM_UP; round++) timed(seed);
  const theirs = python && (await besideNumpy(seed, runOurs));
  if (!theirs) for (let round = 0; round < ROUNDS; round++) runOurs();
  const oursMs = median(ours);
  let isWithin = oursMs <= MOST_MS;
  let beside = '';
  if (theirs) {
    if (!areSame(outcomes, theirs.emergence)) throw new Error(`numpy has other times or stands for ${id}`);
    const times = median(theirs.ms) / oursMs;
    isWithin &&= times >= LEAST_TIMES;
    beside = `; numpy, with the same emergence, ${median(theirs.ms).toFixed(0)} ms: ours is ${times.toFixed(1)} times as fast (at least ${LEAST_TIMES})`;
  }
  within &&= isWithin;
  process.stdout.write(
    `${sowH.length} sowings of ${id} in ${YEARS} years of hours: ${oursMs.toFixed(0)} ms of CPU (at most ${MOST_MS})${beside}: ${isWithin ? 'within' : 'OVER'}\n`,
  );
}
if (!within) process.exitCode = 1;
