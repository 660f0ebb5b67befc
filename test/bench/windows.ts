import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { SowingOutcomes } from '../../src/germination/all-sowings.js';
import type { Seed } from '../../src/germination/cohorts.js';

// What is measured is what ships: the built code.
const built = (file: string): string => new URL(`../../dist/germination/${file}`, import.meta.url).href;
const { allSowings } = (await import(built('all-sowings.js'))) as typeof import('../../src/germination/all-sowings.js');
const { hourlyPace } = (await import(built('hourly-pace.js'))) as typeof import('../../src/germination/hourly-pace.js');
const { roomForSums } = (await import(
  built('running-sums.js')
)) as typeof import('../../src/germination/running-sums.js');
const { crops } = (await import(built('crops.js'))) as typeof import('../../src/germination/crops.js');
const { germinationCurve } = (await import(built('curve.js'))) as typeof import('../../src/germination/curve.js');

const ROUNDS = 9;
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
  const { rows, soil, hotThresholdC, chillingSensitive, spreadLog10 } = crops.get(id)!;
  const curve = germinationCurve(rows, soil?.maximumC ?? null, 0);
  return { curve, hotThresholdC, chillingSensitive, spreadLog10, timeFactor: 1 };
}

/** All that a window asks of every sowing, the clocks of heat and cold included. */
function timed(seed: Seed): { ms: number; outcomes: SowingOutcomes } {
  const before = performance.now();
  const outcomes = allSowings(seed, hourlyC, sowH, { withinH: WITHIN_H, viablePercent: 100 });
  return { ms: performance.now() - before, outcomes };
}

/** A python that has numpy. */
const python = ['python3', '/usr/bin/python3'].find((name) => spawnSync(name, ['-c', 'import numpy']).status === 0);

/**
 * Emergence alone by numpy. It is given more than its due: what every hour does comes ready from our code, whose making
 * counts in our time and not in numpy's; and it follows no clock of heat.
 */
async function besideNumpy(seed: Seed, oursToo: () => void): Promise<{ ms: number[]; read: ReturnType<typeof reader> }> {
  const folder = mkdtempSync(join(tmpdir(), 'windows-'));
  try {
    const pace = hourlyPace(seed, hourlyC, 0, hourlyC.length);
    const { due } = roomForSums(seed, pace, 0);
    const given = { ...pace, due: due.subarray(1), sow: sowH, within: Int32Array.of(WITHIN_H) };
    for (const [name, values] of Object.entries(given)) writeFileSync(join(folder, name), values);
    const child = spawn(python!, [new URL('windows.py', import.meta.url).pathname, folder], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const closed = once(child, 'close');
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    const ms: number[] = [];
    // In turn, so that whatever else the machine does falls on both alike.
    for (let round = 0; round < ROUNDS; round++) {
      oursToo();
      child.stdin.write('again\n');
      ms.push(Number((await lines.next()).value));
    }
    child.stdin.end();
    await closed;
    return { ms, read: reader(folder) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function reader(folder: string) {
  const hours = (name: string) => new Float64Array(new Uint8Array(readFileSync(join(folder, name))).buffer);
  return { up: new Uint8Array(readFileSync(join(folder, 'up'))), first: hours('first'), half: hours('half'), most: hours('most') };
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

for (const id of ['lettuce', 'onion', 'carrot', 'tomato', 'spinach']) {
  const seed = seedOf(id);
  const ours: number[] = [];
  const { ms: coldMs, outcomes } = timed(seed);
  timed(seed); timed(seed);
  const { ms: numpyMs, read } = await besideNumpy(seed, () => ours.push(timed(seed).ms));
  let worst = 0, diff = 0, ups = 0;
  for (let i = 0; i < sowH.length; i++) {
    if (outcomes.up[i] !== read.up[i]) { ups++; continue; }
    if (outcomes.up[i] === 0) continue;
    const d = Math.max(Math.abs(outcomes.firstH[i]! - read.first[i]!), Math.abs(outcomes.halfH[i]! - read.half[i]!), Math.abs(outcomes.mostH[i]! - read.most[i]!));
    if (d > 1e-6 || Number.isNaN(d)) diff++;
    worst = Math.max(worst, d);
  }
  const known = outcomes.known.reduce((a, b) => a + b, 0);
  console.log(id, 'cold', coldMs.toFixed(0), 'ours', median(ours).toFixed(1), 'numpy', median(numpyMs).toFixed(1), 'ratio', (median(numpyMs) / median(ours)).toFixed(1), { worst, diff, ups, known, n: sowH.length, partly: outcomes.up.filter(u=>u<100).length, held: outcomes.upUnheld.filter((u,i)=>u<outcomes.up[i]!).length });
}
