import { type Basis, bases } from '../../basics/series.js';
import { hourEdges } from '../../seedbed/conduction/conduct.js';

/** Instantaneous temperatures an hour apart. */
export interface HourReadings {
  readonly startMs: number;
  readonly tempC: Float64Array;
  readonly basis: readonly Basis[];
}

/**
 * Readings at both ends of every hour whose straight lines have the hours' own means: what is sent back says the same.
 *
 * @param hours `tempC`: the hours' means [°C], one or more; `basis`: what each rests on, codes of basics/series.
 */
export function hourReadings({
  startMs,
  tempC,
  basis,
}: {
  readonly startMs: number;
  readonly tempC: Float64Array;
  readonly basis: Uint8Array;
}): HourReadings {
  const edgesC = hourEdges(tempC);
  return {
    startMs,
    tempC: edgesC.map((edgeC, i) => {
      const [before, after] = [edgesC[i - 1], edgesC[i + 1]];
      return before === undefined || after === undefined ? edgeC : edgeC - (before - 2 * edgeC + after) / 12;
    }),
    basis: Array.from(edgesC, (_, i) => bases[basis[Math.min(i, basis.length - 1)]!]!),
  };
}
