import type { Changes } from '../garden/store/store.js';
import type { Readings } from '../readings/readings.js';

/**
 * Merges new readings into stored ones; at the same instant the new one wins.
 *
 * @param before Stored readings, in time order.
 * @param coming New readings, in time order.
 * @returns All of them in time order, and how many of the new were added, equal to the stored, and different.
 *
 * Cost: O(before + coming).
 */
export function mergeReadings(before: Readings, coming: Readings): { merged: Readings; changes: Changes } {
  const most = before.atMs.length + coming.atMs.length;
  const atMs = new Float64Array(most);
  const valueC = new Float64Array(most);
  const basis = new Uint8Array(most);
  let [n, old, unchanged, replaced] = [0, 0, 0, 0];
  const keep = (from: Readings, i: number) => {
    atMs[n] = from.atMs[i]!;
    valueC[n] = from.valueC[i]!;
    basis[n++] = from.basis[i]!;
  };
  for (let i = 0; i < coming.atMs.length; i++) {
    const instant = coming.atMs[i]!;
    while (old < before.atMs.length && before.atMs[old]! < instant) keep(before, old++);
    if (old < before.atMs.length && before.atMs[old] === instant) {
      if (before.valueC[old] === coming.valueC[i] && before.basis[old] === coming.basis[i]) unchanged++;
      else replaced++;
      old++;
    }
    keep(coming, i);
  }
  while (old < before.atMs.length) keep(before, old++);
  return {
    merged: { atMs: atMs.subarray(0, n), valueC: valueC.subarray(0, n), basis: basis.subarray(0, n) },
    changes: { added: coming.atMs.length - unchanged - replaced, unchanged, replaced },
  };
}
