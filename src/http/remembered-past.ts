import { depthsKey, type FindPast, type PastSoils, pastAt, pastSoils } from '../answers/past-soil.js';
import { HOUR_MS } from '../basics/calendar.js';
import { digestOf, rememberedFind } from './remembered-find.js';

/** Soils kept: thirty years of hours take some 20 MB each, at all depths. */
const MOST_KEPT = 4;

/** Past soil, worked out once for the same temperatures and bed, at all depths at which crops are sown. */
export function rememberedPast(find: (...asked: Parameters<FindPast>) => PastSoils = pastSoils): FindPast {
  const findAll = rememberedFind<Parameters<FindPast>, PastSoils>(
    MOST_KEPT,
    (series, { site, bed, depthCm }, phaseMs) =>
      digestOf(series, { ...site, zone: site.zone.name }, bed, depthsKey(depthCm), phaseMs % HOUR_MS),
    find,
  );
  return (...asked) => pastAt(findAll(...asked), asked[1].depthCm);
}
