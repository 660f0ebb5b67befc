import type { Readings } from '../../src/readings/readings.js';
import { readingsFrom } from './make.js';

export const BATCH = 97;

/** The nth batch of one-minute readings; the value tells the reading. */
export const batch = (n: number): Readings =>
  readingsFrom(
    new Date(Date.parse('2027-01-01T00:00Z') + n * BATCH * 60_000).toISOString(),
    1,
    Array.from({ length: BATCH }, (_, i) => valueAt(n * BATCH + i)),
  );

export const valueAt = (reading: number): number => (reading % 4001) / 100;
