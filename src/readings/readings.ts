/** Readings of a thermometer: instantaneous values in time order, one to an instant. All three arrays have one length. */
export interface Readings {
  /** Milliseconds since 1970-01-01T00:00Z, rising. */
  readonly atMs: Float64Array;
  /** Very long files keep seven digits. */
  readonly valueC: Float64Array | Float32Array;
  /** Provenance of each: a code of basics/series. */
  readonly basis: Uint8Array;
}

/** A reading on its way in; `place` says where in the request it stood. */
export interface RawReading {
  readonly atMs: number;
  readonly valueC: number;
  readonly basis: number;
}

/**
 * Readings in time order, whatever the order they came in; a reading repeated changes nothing.
 *
 * @returns The readings, and the instants that came with two different values: their mean stands, and they are told.
 */
export function rowsInTimeOrder(raw: readonly RawReading[]): { readings: Readings; conflictsMs: number[] } {
  const sorted = [...raw].sort((a, b) => a.atMs - b.atMs || a.valueC - b.valueC || a.basis - b.basis);
  const conflictsMs: number[] = [];
  const kept: RawReading[] = [];
  for (let i = 0; i < sorted.length; ) {
    const { atMs, basis } = sorted[i]!;
    const values = [sorted[i]!.valueC];
    for (i++; i < sorted.length && sorted[i]!.atMs === atMs; i++) {
      if (sorted[i]!.valueC !== values.at(-1)) values.push(sorted[i]!.valueC);
    }
    if (values.length > 1) conflictsMs.push(atMs);
    kept.push({ atMs, basis, valueC: values.reduce((sum, value) => sum + value, 0) / values.length });
  }
  return {
    readings: {
      atMs: Float64Array.from(kept, (reading) => reading.atMs),
      valueC: Float64Array.from(kept, (reading) => reading.valueC),
      basis: Uint8Array.from(kept, (reading) => reading.basis),
    },
    conflictsMs,
  };
}
