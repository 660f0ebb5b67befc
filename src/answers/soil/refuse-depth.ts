import { notUnderstood } from '../../basics/errors.js';
import { fieldFact } from '../../basics/field-facts.js';
import { type BedKind, containerOf } from '../../seedbed/bed.js';

/** Refuses a depth that lies below a container's soil. */
export function refuseDepth(kind: BedKind, depthCm: number, path: readonly string[]): void {
  const container = containerOf(kind);
  if (!container || depthCm <= container.depthCm) return;
  throw notUnderstood([
    {
      path,
      detail: fieldFact('field.below-container', { maxDepthCm: container.depthCm, kind, depthCm }),
    },
  ]);
}
