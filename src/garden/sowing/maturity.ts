import { cropInFacts } from '../../germination/custom-crop.js';
import { minimaOf } from '../bed/days-outdoors.js';
import { frostEnd } from './frost-end.js';
import { type GrownPlant, type Harvest, harvestOf } from './harvest.js';
import type { KnownSowing } from './known-sowing.js';
import type { SowingWarning } from './sowing-facts.js';

/** null: nobody knows when, or, with the reason, frost comes before. */
export interface MaturityDates {
  readonly harvest: Harvest | null;
  readonly why?: SowingWarning;
}

/** When a sowing may be ready, as far as frost lets it; or why frost takes it before. */
export function maturityIn({ crop, kept }: Pick<KnownSowing, 'crop' | 'kept'>): (from: GrownPlant) => MaturityDates {
  const { latitude } = kept.site;
  const endAfter = frostEnd(minimaOf(kept), crop.frost, latitude);
  return (from) => {
    const harvest = harvestOf(crop, from, latitude);
    const end = harvest && endAfter(from.plantedOut ?? from.half);
    if (!end || harvest.to <= end) return { harvest };
    if (harvest.from < end) return { harvest: { ...harvest, to: end } };
    return { harvest: null, why: { code: 'frost-before-harvest', params: { crop: cropInFacts(crop), endDate: end } } };
  };
}
