import { type FindPast, pastSoil } from '../answers/past-soil.js';
import { HOUR_MS } from '../basics/calendar.js';
import { digestOf, rememberedFind } from './remembered-find.js';

/** Soils kept: thirty years of hours take some 2 MB each. */
const MOST_KEPT = 16;

/** Past soil, worked out once for the same temperatures, bed and depth. */
export const rememberedPast = (find: FindPast = pastSoil): FindPast =>
  rememberedFind(
    MOST_KEPT,
    (series, { site, bed, depthCm }, phaseMs) =>
      digestOf(series, { ...site, zone: site.zone.name }, bed, depthCm, phaseMs % HOUR_MS),
    find,
  );
