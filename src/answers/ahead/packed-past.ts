import type { PlainDate } from '../../basics/calendar.js';
import { type AirDays, type PastSoil, STEPS_PER_K } from './past-soil.js';

/** Raised whenever the bytes change, or what past soil is made of: older ones are then worked out again. */
export const PACKED_VERSION = 3;

/** All but the long arrays. Gaps are hours without a value, from the first up to, not including, the last. */
interface Head extends Omit<PastSoil, 'hourlyC' | 'comingC' | 'air' | 'course'> {
  readonly course: PlainWaves | null;
  readonly hours: number;
  readonly gaps: readonly (readonly [fromH: number, toH: number])[];
  readonly comingHours: number;
  readonly air: { readonly firstDate: PlainDate; readonly days: number; readonly inSteps: boolean } | null;
}
interface PlainWaves {
  readonly mean: number;
  readonly cosine: readonly number[];
  readonly sine: readonly number[];
}

/** The version, and the length of the head. */
const PREFIX_BYTES = 5;

/**
 * Past soil as few bytes, which pack well further: second differences of its steps, most of them one byte.
 *
 * @param past As `pastSoil` gives it: in whole steps of 1/100 K.
 * @returns Bytes from which `unfoldPast` makes the same again, to the bit.
 */
export function foldPast({ hourlyC, comingC, air, course, ...rest }: PastSoil): Uint8Array {
  const head: Head = {
    ...rest,
    course: course && plain(course),
    hours: hourlyC.length,
    gaps: gapsOf(hourlyC),
    comingHours: comingC.length,
    air: air && {
      firstDate: air.firstDate,
      days: air.minC.length,
      inSteps: air.minC.every(isInSteps) && air.maxC.every(isInSteps),
    },
  };
  const headBytes = new TextEncoder().encode(JSON.stringify(head));
  // No second difference of what a thermometer can read takes more than four bytes.
  const bytes = new Uint8Array(
    PREFIX_BYTES + headBytes.length + 4 * (hourlyC.length + comingC.length) + 16 * (air?.minC.length ?? 0),
  );
  const view = new DataView(bytes.buffer);
  bytes[0] = PACKED_VERSION;
  view.setUint32(1, headBytes.length, true);
  bytes.set(headBytes, PREFIX_BYTES);
  let at = writeSteps(bytes, PREFIX_BYTES + headBytes.length, hourlyC);
  at = writeSteps(bytes, at, comingC);
  for (const tempsC of air ? [air.minC, air.maxC] : []) {
    if (head.air!.inSteps) at = writeSteps(bytes, at, tempsC);
    else for (const tempC of tempsC) at = writeDouble(view, at, tempC);
  }
  return bytes.slice(0, at);
}

/** The past soil that was folded; null: by another version. */
export function unfoldPast(bytes: Uint8Array): PastSoil | null {
  if (bytes[0] !== PACKED_VERSION) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const headEnd = PREFIX_BYTES + view.getUint32(1, true);
  const head = JSON.parse(new TextDecoder().decode(bytes.subarray(PREFIX_BYTES, headEnd))) as Head;
  const { hours, gaps, comingHours, air, course } = head;
  const hourlyC = new Float64Array(hours);
  for (const [fromH, toH] of gaps) hourlyC.fill(NaN, fromH, toH);
  const comingC = new Float64Array(comingHours);
  let at = readSteps(bytes, headEnd, hourlyC);
  at = readSteps(bytes, at, comingC);
  // Field by field in the order of `pastOf`: what works with objects made in one way is fast.
  return {
    startMs: head.startMs,
    hourlyC,
    course: course && typed(course),
    years: head.years,
    comingC,
    air: air && extremesFrom(air, bytes, view, at),
    isUsual: head.isUsual,
    sdK: head.sdK,
    assumptions: head.assumptions,
    warnings: head.warnings,
  };
}

function extremesFrom(
  { firstDate, days, inSteps }: NonNullable<Head['air']>,
  bytes: Uint8Array,
  view: DataView,
  from: number,
): AirDays {
  const [minC, maxC] = [new Float64Array(days), new Float64Array(days)];
  let at = from;
  for (const tempsC of [minC, maxC]) {
    if (inSteps) at = readSteps(bytes, at, tempsC);
    else for (let day = 0; day < days; day++, at += 8) tempsC[day] = view.getFloat64(at, true);
  }
  return { firstDate, minC, maxC };
}

const plain = ({ mean, cosine, sine }: { mean: number; cosine: Float64Array; sine: Float64Array }): PlainWaves => ({
  mean,
  cosine: [...cosine],
  sine: [...sine],
});
const typed = ({ mean, cosine, sine }: PlainWaves) => ({
  mean,
  cosine: Float64Array.from(cosine),
  sine: Float64Array.from(sine),
});

const isInSteps = (tempC: number): boolean => Math.round(tempC * STEPS_PER_K) / STEPS_PER_K === tempC;

function gapsOf(hourlyC: Float64Array): [fromH: number, toH: number][] {
  const gaps: [number, number][] = [];
  for (let hour = 0; hour < hourlyC.length; hour++) {
    if (!Number.isNaN(hourlyC[hour])) continue;
    const last = gaps.at(-1);
    if (last?.[1] === hour) last[1] = hour + 1;
    else gaps.push([hour, hour + 1]);
  }
  return gaps;
}

function writeDouble(view: DataView, at: number, value: number): number {
  view.setFloat64(at, value, true);
  return at + 8;
}

/** Writes second differences, small ones of either sign as small numbers, seven bits a byte; NaN is passed over. */
function writeSteps(bytes: Uint8Array, from: number, tempsC: Float64Array): number {
  let at = from;
  let before = 0;
  let slope = 0;
  for (const tempC of tempsC) {
    if (Number.isNaN(tempC)) continue;
    const steps = Math.round(tempC * STEPS_PER_K);
    const bend = steps - before - slope;
    slope = steps - before;
    before = steps;
    let left = bend < 0 ? -2 * bend - 1 : 2 * bend;
    while (left > 127) {
      bytes[at++] = (left & 127) | 128;
      left >>>= 7;
    }
    bytes[at++] = left;
  }
  return at;
}

/** Values read in one call: see `hourlyProgress`. */
const CHUNK = 1024;

/** Offset of the next byte to read. */
interface StepReader {
  at: number;
  steps: number;
  slope: number;
}

/** Reads as many as there are places that are not NaN, in place. */
function readSteps(bytes: Uint8Array, from: number, tempsC: Float64Array): number {
  const reader: StepReader = { at: from, steps: 0, slope: 0 };
  for (let i = 0; i < tempsC.length; i += CHUNK)
    readChunk(reader, bytes, tempsC, i, Math.min(tempsC.length, i + CHUNK));
  return reader.at;
}

function readChunk(reader: StepReader, bytes: Uint8Array, tempsC: Float64Array, from: number, to: number): void {
  let { at, steps, slope } = reader;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(tempsC[i]!)) continue;
    let read = bytes[at++]!;
    let value = read & 127;
    for (let shift = 7; read > 127; shift += 7) {
      read = bytes[at++]!;
      value |= (read & 127) << shift;
    }
    slope += value & 1 ? -((value + 1) >>> 1) : value >>> 1;
    steps += slope;
    tempsC[i] = steps / STEPS_PER_K;
  }
  reader.at = at;
  reader.steps = steps;
  reader.slope = slope;
}
