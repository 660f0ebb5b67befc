import { notUnderstood } from '../../basics/errors.js';
import { type BedKind, containerOf } from '../../seedbed/bed.js';

/** Refuses a depth that lies below a container's soil. */
export function refuseDepth(kind: BedKind, depthCm: number, path: readonly string[]): void {
  const container = containerOf(kind);
  if (!container || depthCm <= container.depthCm) return;
  throw notUnderstood([
    {
      path,
      detail: `must be at most ${container.depthCm} in a ${kind}, which is taken to be so deep; it was ${depthCm}. For deeper soil say "raised-bed"`,
    },
  ]);
}
