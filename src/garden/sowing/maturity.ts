import { cropInFacts } from '../../germination/custom-crop.js';
import { daysOutdoors, minimaOf } from '../bed/days-outdoors.js';
import { frostEnd } from './frost-end.js';
import { type GrownPlant, harvestOf } from './harvest.js';
import { harvestInYears, type MaturityDates } from './harvest-in-years.js';
import type { KnownSowing } from './known-sowing.js';

/**
 * When a sowing may be ready, as far as frost lets it, or why frost takes it before: by the air of past years with the rules of sowing
 * windows; by published days where too little is known of them, or of the crop.
 */
export function maturityIn({ crop, kept }: Pick<KnownSowing, 'crop' | 'kept'>): (from: GrownPlant) => MaturityDates {
  const { latitude } = kept.site;
  const air = crop.growth?.harvest && latitude !== null ? daysOutdoors(kept) : null;
  const byDays = byPublishedDays(crop, kept);
  return (from) => (air && harvestInYears(crop, from, air, latitude!)) ?? byDays(from);
}

function byPublishedDays(crop: KnownSowing['crop'], kept: KnownSowing['kept']): (from: GrownPlant) => MaturityDates {
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
