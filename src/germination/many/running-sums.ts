import { COHORTS, cohortZ, type HourlyProgress, type Seed } from '../run/cohorts.js';

const BLOCK_H = 24;
/** Of each block: cohorts 1 to 100; place 0 stays empty. */
const WIDTH = COHORTS + 1;
/** The sums of a year round by less than this of the way to go: what is due at the end of an hour is up in it. */
const HAIR = 1e-10;

/** The way that each cohort has made since an hour, noted once a day, for some hundred days. */
export interface RunningSums {
  readonly hourly: HourlyProgress;
  /** How far each cohort has to go. Shape (101). */
  readonly due: Float64Array;
  fromH: number;
  /** Row b: the way made before block b of 24 hours. Shape (blocks + 1, 101). */
  readonly before: Float64Array;
  /** By cohort, the block in which that of the last sowing asked for came up: later sowings are never up sooner. */
  readonly upInBlock: Int32Array;
}

/** Room for the running sums of so many hours. */
export const roomForSums = (seed: Seed, hourly: HourlyProgress, hours: number): RunningSums => ({
  hourly,
  due: Float64Array.of(0, ...cohortZ.map((z) => 10 ** (seed.sigmaLog10 * z) * (1 - 1e-12))),
  fromH: 0,
  before: new Float64Array((Math.ceil(hours / BLOCK_H) + 1) * WIDTH),
  upInBlock: new Int32Array(WIDTH),
});

/**
 * Sums up the way that each cohort makes, from an hour on.
 *
 * A cohort moves in every hour in which at least its number is germinable, so one sum over cohorts from the slowest to the
 * fastest gives all of a day's ways at once.
 *
 * @param sums  Where the sums are put; room enough for the hours.
 * @param fromH First hour of the record.
 * @param toH   The hour after the last.
 *
 * Cost: O(hours) and 100 steps a day.
 */
export function sumUp(sums: RunningSums, fromH: number, toH: number): void {
  const { before, upInBlock } = sums;
  const { germinable, progressPerHour } = sums.hourly;
  const added = new Float64Array(WIDTH);
  const ways = new Float64Array(WIDTH);
  sums.fromH = fromH;
  upInBlock.fill(0);
  before.fill(0, 0, WIDTH);
  for (let hour = fromH, row = 0; hour < toH; row += WIDTH) {
    const endH = Math.min(hour + BLOCK_H, toH);
    let most = 0;
    for (; hour < endH; hour++) {
      const moving = germinable[hour]!;
      added[moving]! += progressPerHour[hour]!;
      if (moving > most) most = moving;
    }
    // Cohorts beyond those that any hour moved stay where they are.
    let way = 0;
    for (let cohort = most; cohort > 0; cohort--) {
      way += added[cohort]!;
      ways[cohort]! += way;
    }
    before.set(ways, row + WIDTH);
    added.fill(0, 0, most + 1);
  }
}

/**
 * Is a cohort of a sowing up before an hour begins? Mostly the days' sums tell it already.
 *
 * @param cohort 1 to 100.
 * @param sowH   The sowing's hour, among the summed ones.
 * @param byH    The hour, not before the sowing's; at most the one after the summed ones.
 */
export function isUp(sums: RunningSums, cohort: number, sowH: number, byH: number): boolean {
  const near = wayBefore(sums, sowH, cohort) + sums.due[cohort]! * (1 - HAIR);
  const block = blockOf(sums, byH);
  const way = sums.before[block * WIDTH + cohort]!;
  if (way >= near) return true;
  if (startOf(sums, block) === byH || sums.before[(block + 1) * WIDTH + cohort]! < near) return false;
  return wayBefore(sums, byH, cohort) >= near;
}

/**
 * When a cohort that `isUp` before `byH` came up [h since sowing].
 *
 * @param sums   Asked for sowings that never go back.
 * @param cohort 1 to 100.
 */
export function upAtH(sums: RunningSums, cohort: number, sowH: number, byH: number): number {
  const { before, due, upInBlock } = sums;
  const { germinable, progressPerHour } = sums.hourly;
  const atSowing = wayBefore(sums, sowH, cohort);
  const near = atSowing + due[cohort]! * (1 - HAIR);
  const lastBlock = blockOf(sums, byH - 1);
  let block = Math.max(upInBlock[cohort]!, blockOf(sums, sowH));
  while (block < lastBlock && before[(block + 1) * WIDTH + cohort]! < near) block++;
  upInBlock[cohort] = block;

  const fromH = Math.max(startOf(sums, block), sowH);
  const toH = Math.min(startOf(sums, block + 1), byH);
  let way = wayBefore(sums, fromH, cohort);
  // The hours can round to a hair less than the days: then it is up at the end of the last hour in which it moved.
  let upH = sowH;
  for (let hour = fromH; hour < toH; hour++) {
    if (germinable[hour]! < cohort) continue;
    const goal = atSowing + due[cohort]!;
    if (way + progressPerHour[hour]! >= near)
      return hour + Math.min(1, Math.max(0, goal - way) / progressPerHour[hour]!) - sowH;
    way += progressPerHour[hour]!;
    upH = hour + 1;
  }
  return upH - sowH;
}

/** Cut to a whole number by `| 0`, which is a good deal faster here than Math.floor. */
const blockOf = ({ fromH }: RunningSums, hour: number): number => ((hour - fromH) / BLOCK_H) | 0;

const startOf = ({ fromH }: RunningSums, block: number): number => fromH + block * BLOCK_H;

/** The way a cohort has made before an hour. */
function wayBefore(sums: RunningSums, hour: number, cohort: number): number {
  const { germinable, progressPerHour } = sums.hourly;
  const block = blockOf(sums, hour);
  let way = sums.before[block * WIDTH + cohort]!;
  for (let h = startOf(sums, block); h < hour; h++) if (germinable[h]! >= cohort) way += progressPerHour[h]!;
  return way;
}
