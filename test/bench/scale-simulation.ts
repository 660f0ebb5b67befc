import { chance } from '../../src/demo/chance.js';
import { lookQueue } from './scale-queue.js';

/** CPU that something costs [ms]: of the thread that answers requests, and of a worker. */
export interface UnitCost {
  readonly mainMs: number;
  readonly workMs: number;
}

export interface Costs {
  /** The growing leaf with eight sowings and one question about windows, of a garden nobody looked at since the start. */
  readonly firstLook: UnitCost;
  /** The same again. */
  readonly furtherLook: UnitCost;
  /** Eight sowings, looked at for a webhook. */
  readonly backgroundLook: UnitCost;
  readonly reading: UnitCost;
  readonly calendar: UnitCost;
  /** What a source tells each day, once it is fetched. */
  readonly source: UnitCost;
  /** Bytes written for one reading, and for a source’s days [kB]. */
  readonly readingKB: number;
  readonly sourceKB: number;
  /** Posts of readings that SQLite commits one after another, of one caller [1/s]. */
  readonly commitsASecond: number;
  /** Bytes of a garden’s answers, of its air as typed columns, and of all it has on disk [kB]. */
  readonly answersKB: number;
  readonly seriesKB: number;
  readonly diskKB: number;
  /** Memory of an instance at rest [MB]. */
  readonly restMB: number;
}

export interface Assumptions {
  readonly gardens: number;
  /** Each garden is opened once a day, and looked at so often more. */
  readonly furtherLooks: number;
  /** The busiest moment, beside the day’s mean. */
  readonly peak: number;
  /** Shares of gardens: with a webhook, with a probe that sends each minute, with two calendars fetched each hour. */
  readonly webhookShare: number;
  readonly probeShare: number;
  readonly calendarShare: number;
  /** Looks a day for a webhook, without such a probe and with one. */
  readonly looks: { readonly quiet: number; readonly probed: number };
}

export interface Machine {
  readonly name: string;
  readonly instances: number;
  /** Of each instance; one is for the thread that answers requests. */
  readonly cores: number;
  /** Each of its two caches, of answers and of air, holds so much [MB]. */
  readonly cacheMB: number;
  /** Whether an owner is always sent to the same instance. */
  readonly isSticky: boolean;
}

export interface Scale {
  /** Cores that the work wants, by the hour of the day. */
  readonly coresByHour: readonly number[];
  /** Waiting for a worker, of those who look [s]. */
  readonly waitP50S: number;
  readonly waitP99S: number;
  /** Of those who look, how many would have waited over ten seconds and are refused with 503, in percent. */
  readonly refusedPercent: number;
  /** How late looks for webhooks come, 99 of 100 earlier [min]. */
  readonly lookLateP99Min: number;
  readonly answersHitPercent: number;
  readonly seriesHitPercent: number;
  readonly memoryMB: number;
  readonly diskGB: number;
  readonly writesASecond: number;
  readonly writtenMBASecond: number;
  /** How many gardens each part would bear at 80 % of what it has, the first wall first. */
  readonly walls: readonly { readonly what: Wall; readonly gardens: number }[];
}
export type Wall = 'workers' | 'main threads' | 'looks for webhooks' | 'commits of SQLite';

const SEED = 100_000;
const HOURS = 24;
const DAY_S = 86_400;
const SHARE_USED = 0.8;
/** Looks for webhooks are due so often, and each takes its turn in the database [1/day]. */
const TURNS_OF_LOOKS = 96;
/** Transactions of one fetch: taken on, days kept, coming days kept, ended. */
const WRITES_OF_SOURCE = 4;
/** After one look the next comes so much later, on average [s]. */
const BETWEEN_LOOKS_S = 1200;

/** A day of so many gardens, drawn anew but the same for the same seed. Linear in gardens. */
export function simulate(costs: Costs, assumptions: Assumptions, machine: Machine): Scale {
  const { gardens, probeShare, webhookShare, calendarShare, looks: looksADay } = assumptions;
  const { instances, cores, isSticky } = machine;
  const random = chance(SEED);
  const bound = (kB: number): number => Math.floor((machine.cacheMB * 1024) / kB);
  const answers = Array.from({ length: instances }, () => leastRecent(bound(costs.answersKB), gardens));
  const series = Array.from({ length: instances }, () => leastRecent(bound(costs.seriesKB), gardens));
  const queues = Array.from({ length: instances }, () => lookQueue(cores - 1));
  const instanceOf = (garden: number): number => (isSticky ? garden : Math.floor(random() * instances)) % instances;
  const mainMs = new Float64Array(HOURS);
  const workMs = new Float64Array(HOURS);
  const charge = (hour: number, { mainMs: main, workMs: work }: UnitCost, times = 1): void => {
    mainMs[hour]! += main * times;
    workMs[hour]! += work * times;
  };

  const { tenths, garden: ofLook, kind } = looksOf(assumptions, random);
  let [answersHits, people, seriesHits] = [0, 0, 0];
  for (let i = 0; i < kind.length; i++) {
    const garden = ofLook[i]!;
    const atS = tenths[i]! / 10;
    const at = instanceOf(garden);
    const isPerson = kind[i] !== BACKGROUND;
    // A reading makes the bed another one: nothing kept of it holds for longer than a minute.
    const hasProbe = garden < probeShare * gardens;
    const isKept = isPerson && answers[at]!.touch(garden) && kind[i] === FURTHER && !hasProbe;
    if (isPerson) people++;
    if (isKept) answersHits++;
    else if (series[at]!.touch(garden)) seriesHits++;
    const cost = isKept ? costs.furtherLook : isPerson ? costs.firstLook : costs.backgroundLook;
    charge(Math.floor(atS / 3600), cost);
    if (!isKept) queues[at]!.add({ atS, tookS: cost.workMs / 1000, isPerson });
  }
  for (let hour = 0; hour < HOURS; hour++) {
    charge(hour, costs.reading, probeShare * gardens * 60);
    charge(hour, costs.calendar, calendarShare * gardens * 2);
    charge(hour, costs.source, gardens / HOURS);
  }
  const waits = queues.flatMap((queue) => queue.end());
  const waited = waits.filter(({ isPerson }) => isPerson);
  const served = waited.filter(({ isRefused }) => !isRefused).map(({ waitS }) => waitS);
  const late = waits.filter(({ isPerson }) => !isPerson).map(({ waitS }) => waitS / 60);

  const coresByHour = Array.from(mainMs, (main, hour) => round((main + workMs[hour]!) / 3_600_000));
  const readings = (probeShare * gardens) / 60;
  const sources = (gardens * WRITES_OF_SOURCE) / DAY_S;
  const turns = (webhookShare * gardens * TURNS_OF_LOOKS) / DAY_S;
  const writes = readings + sources + turns;
  const lookS = costs.backgroundLook.workMs / 1000;
  const lookLoad =
    (webhookShare * gardens * (probeShare * looksADay.probed + (1 - probeShare) * looksADay.quiet) * lookS) / DAY_S;
  const bears = (used: number, of: number): number => Math.round((gardens * SHARE_USED * of) / used / 1000) * 1000;
  const busiest = (ms: Float64Array): number => Math.max(...ms) / 3_600_000;
  const walls: { what: Wall; gardens: number }[] = [
    { what: 'workers', gardens: bears(busiest(workMs), instances * (cores - 1)) },
    { what: 'main threads', gardens: bears(busiest(mainMs), instances) },
    { what: 'looks for webhooks', gardens: bears(lookLoad, instances) },
  ];
  if (instances === 1) walls.push({ what: 'commits of SQLite', gardens: bears(writes, costs.commitsASecond) });
  return {
    coresByHour,
    waitP50S: round(quantile(served, 0.5)),
    waitP99S: round(quantile(served, 0.99)),
    refusedPercent: round((100 * (waited.length - served.length)) / people),
    lookLateP99Min: round(quantile(late, 0.99)),
    answersHitPercent: Math.round((100 * answersHits) / people),
    seriesHitPercent: Math.round((100 * seriesHits) / Math.max(1, kind.length - answersHits)),
    memoryMB: Math.round(costs.restMB + 2 * machine.cacheMB),
    diskGB: round((gardens * costs.diskKB) / 1024 / 1024),
    writesASecond: Math.round(writes),
    writtenMBASecond: round((readings * costs.readingKB + (gardens * costs.sourceKB) / DAY_S) / 1024),
    walls: walls.sort((a, b) => a.gardens - b.gardens),
  };
}

/** The looks of a day in the order of time. Shapes (looks). */
interface Looks {
  /** When, in tenths of a second. */
  readonly tenths: Int32Array;
  readonly garden: Int32Array;
  readonly kind: Uint8Array;
}
/** The first look of a day finds another date, and so no answer that is kept. */
const FIRST = 0;
const FURTHER = 1;
const BACKGROUND = 2;

function looksOf(
  { gardens, furtherLooks, peak, webhookShare, probeShare, looks }: Assumptions,
  random: () => number,
): Looks {
  const hours = hourShares(peak);
  const drawn: number[][] = [[], [], []];
  const add = (atS: number, garden: number, kind: number): void => {
    drawn[0]!.push(Math.floor(atS * 10));
    drawn[1]!.push(garden);
    drawn[2]!.push(kind);
  };
  for (let garden = 0; garden < gardens; garden++) {
    let draw = random();
    let hour = 0;
    while (hour < HOURS - 1 && draw > hours[hour]!) draw -= hours[hour++]!;
    let atS = 3600 * (hour + random());
    add(atS, garden, FIRST);
    for (let i = 0; i < furtherLooks; i++) {
      atS = (atS - BETWEEN_LOOKS_S * Math.log(random())) % DAY_S;
      add(atS, garden, FURTHER);
    }
    if (garden % 1000 >= webhookShare * 1000) continue;
    // A new day makes all gardens due at once; changes in them make them due every quarter of an hour.
    const times = garden < probeShare * gardens ? looks.probed : looks.quiet;
    const phaseS = random() * 60;
    for (let i = 0; i < times; i++) add((i * DAY_S) / times + phaseS, garden, BACKGROUND);
  }
  const [tenths, ofGarden, kinds] = drawn as [number[], number[], number[]];
  const order = sortedBy(tenths, 10 * DAY_S);
  return {
    tenths: order.map((i) => tenths[i]!),
    garden: order.map((i) => ofGarden[i]!),
    kind: Uint8Array.from(order, (i) => kinds[i]!),
  };
}

/** The order of whole numbers from 0 to below `end`, equal ones as they came. */
function sortedBy(values: readonly number[], end: number): Int32Array {
  const from = new Int32Array(end + 1);
  for (const value of values) from[value + 1]!++;
  for (let value = 0; value < end; value++) from[value + 1]! += from[value]!;
  const order = new Int32Array(values.length);
  values.forEach((value, i) => {
    order[from[value]!++] = i;
  });
  return order;
}

/** Which share of the day’s looks falls into each hour: a hill in the evening, whose top is so many times the mean. */
function hourShares(peak: number): number[] {
  const hill = Array.from({ length: HOURS }, (_, hour) => Math.exp(-(((hour - 18) / 2) ** 2) / 2));
  const mean = hill.reduce((a, b) => a + b) / HOURS;
  const height = (peak - 1) / (1 - mean);
  return hill.map((share) => (peak - height + height * share) / HOURS);
}

/** Remembers the last so many of whole numbers below `end`; tells whether one was still there. */
function leastRecent(most: number, end: number) {
  const touchedAt = new Int32Array(end).fill(-1);
  const touched: number[] = [];
  let [oldest, size] = [0, 0];
  return {
    touch(one: number): boolean {
      const isKnown = touchedAt[one]! >= 0;
      touchedAt[one] = touched.push(one) - 1;
      if (!isKnown) size++;
      for (; size > most; oldest++) {
        const candidate = touched[oldest]!;
        if (touchedAt[candidate] !== oldest) continue;
        touchedAt[candidate] = -1;
        size--;
      }
      return isKnown;
    },
  };
}

const round = (value: number): number => Number(value.toPrecision(3));

function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return 0;
  return Float64Array.from(values).sort()[Math.min(values.length - 1, Math.floor(share * values.length))]!;
}
