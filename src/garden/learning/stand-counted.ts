import type { Forecast } from '../../answers/forecast/forecast.js';
import type { Count } from '../store/season-store.js';

/**
 * A forecast's stand after a count: no fewer are expected than stood there last, nor more than were sown.
 *
 * @param counts In the order of dates; those of a stretch, or after thinning, say nothing of the whole row.
 */
export function standCounted(
  stand: Forecast['stand'],
  counts: readonly Count[],
  seeds: number | null,
): Forecast['stand'] {
  const last = counts.at(-1);
  if (!last || !seeds || !stand.seedlings) return stand;
  if ((last.ofSeeds ?? seeds) !== seeds || counts.some(({ thinned }) => thinned !== false)) return stand;
  const standing = Math.min(seeds, last.seedlings);
  const atLeast = (least: number, { from, to }: { readonly from: number; readonly to: number }) => ({
    from: Math.max(least, from),
    to: Math.max(least, to),
  });
  return {
    ...stand,
    field: atLeast((100 * standing) / seeds, stand.field),
    seedlings: atLeast(standing, stand.seedlings),
  };
}
