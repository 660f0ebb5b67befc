import type { BedMake, Cover, Moisture } from '../bed.js';
import { sunshineMJ } from '../sun/sun.js';
import type { ClimateNumbers } from './climate-numbers.js';
import { onBareGround, type ResidualModel, residualsWithoutRain, residualsWithRain } from './residual-model.js';

/** How weather meets the soil: F = air + constantK + perRangeK (d - 13) + sunK(d, Ra), through a conductance. */
export interface Surface {
  /** h, between the sol-air temperature and the soil's surface [W m⁻² K⁻¹]. */
  readonly conductance: number;
  /** What a dull day takes off the air's mean [K]. */
  readonly constantK: number;
  /** What each kelvin of the day's range beyond 13 K takes off: clear nights lose more. */
  readonly perRangeK: number;
  /** What sunshine adds to the day's mean [K], by the day's range [K] and the sunshine above the atmosphere [MJ m⁻² d⁻¹]. */
  readonly sunK: (rangeK: number, extraterrestrialMJ: number) => number;
  /** True where the day's air counts as the middle of its extremes, as the constants were fitted. */
  readonly isOfExtremes: boolean;
  /** λ of the soil below [W m⁻¹ K⁻¹] and C [J m⁻³ K⁻¹]. */
  readonly conductivity: number;
  readonly heatCapacity: number;
  /** How its daily means at 5 cm differ from measured ones. */
  readonly residuals: ResidualModel;
}

/** Sunshine as a mean power [W m⁻²] from a daily sum [MJ m⁻²]. */
const W_PER_MJ = 1e6 / 86_400;

/**
 * Q: how sunny a day is, about 1 on a normal summer day.
 *
 * @param rangeK             The day's range of the air, at least 0.5 [K].
 * @param extraterrestrialMJ Sunshine above the atmosphere [MJ m⁻² d⁻¹].
 * @returns Q, no unit.
 * @example sunninessOf(14, 41.9105) // => 1.62985
 */
export const sunninessOf = (rangeK: number, extraterrestrialMJ: number): number => (extraterrestrialMJ * rangeK) / 360;

/** What sunshine adds on bare soil, by how wet it is kept, over what it adds where the rain keeps it [1]. Moist and wet are
 * scaled by the contrast of wet and dry surfaces on clear days, and not measured; dry from desert stations. The same is
 * taken to hold under grass. */
const MOISTURE_SUN: Record<Moisture, number> = { rain: 1, moist: 0.68, wet: 0.48, dry: 1.06 };
/** Moist peat in a pot or tray of unknown colour [K per W m⁻²]: between white, 0.020, and black, 0.025. */
const PEAT_SUN: Record<Moisture, number> = { rain: 0.0225, moist: 0.0225, wet: 0.016, dry: 0.034 };
/** What a cover adds to the sol-air temperature of a sunny summer day [K]: published rises of the mean under films and
 * fleece; mulch lowers the mean by 1 K and, by its conductance, the afternoon at 1 cm by 6 K. */
const COVER_K: Record<Cover, number> = { bare: 0, grass: 0, mulch: -1, 'black-film': 2, 'clear-film': 4, fleece: 1 };
/** That day: 32 and 18 °C, 26 MJ m⁻². */
const SUNNY_W = 301;
/** Shade keeps off the cold of the sky as well as the sun, so that it counts by less than its own percent (our judgement). */
const SHADE_COUNTS = 0.7;
/** Raised soil takes about a tenth more sun [1]: our judgement. */
const RAISED_SUN = 1.1;
/** Between bare soil and the air [W m⁻² K⁻¹]: our own fit to one plot at Hamburg. */
const BARE_CONDUCTANCE = 20;
/** Straw or chips keep the surface from the air [W m⁻² K⁻¹]. */
const MULCHED_CONDUCTANCE = 8;

/**
 * How weather meets the soil of a bed.
 *
 * @param bed    Its kind, cover, moisture and shade; not indoors.
 * @param place  What the place's own years say; null: no year of its air is known.
 * @returns The surface, and the soil below it.
 *
 * Source: grass: our own study of 99 stations of the U.S. Climate Reference Network, daily means; bare: our own fit to one
 * plot, Hamburg, April to December 2018, by the hour (Deutscher Wetterdienst, station 01975). Each month left out in turn,
 * its daily means at 5 cm came within 1.29 K (RMSE), without the term in the range within 1.37 K, and November and
 * December within 0.6 to 0.9 K rather than 1.1 to 1.6 K. Soil: de Vries (1963), as tabulated by Moene, van Dam (2014),
 * Table 2.2. Covers: Lamont (1993), Ham (1993) for films, from copies; the split into surface terms is ours.
 * Validity: 26 to 49° N, mostly grass; everything but grass and bare, rain-fed ground is derived, not measured.
 */
export function surfaceOf(bed: BedMake, place: ClimateNumbers | null): Surface {
  const surface = describedSurface(bed, place);
  if (isChecked(bed)) return surface;
  const { residuals } = surface;
  return { ...surface, residuals: { ...residuals, scale: UNCHECKED_SCALE * residuals.scale } };
}

/** Beds that were compared with measured ones: grass, and bare ground as the rain leaves it, in the open. */
export const isChecked = ({ kind, cover, moisture, shadePercent }: BedMake): boolean =>
  kind === 'open-ground' && (cover === 'grass' || cover === 'bare') && moisture === 'rain' && shadePercent === 0;

/** How much more the squares of the errors are taken to be in other beds (our judgement). */
const UNCHECKED_SCALE = 2;

function describedSurface(bed: BedMake, place: ClimateNumbers | null): Surface {
  const insolationFactor = (1 - (SHADE_COUNTS * bed.shadePercent) / 100) * (bed.kind === 'raised-bed' ? RAISED_SUN : 1);
  const isContainer = bed.kind === 'pot' || bed.kind === 'tray' || bed.kind === 'indoors';
  if (bed.cover === 'grass' && !isContainer)
    return withSun(grassSurface(place), insolationFactor * MOISTURE_SUN[bed.moisture]);
  return isContainer ? peatSurface(bed, insolationFactor) : bareSurface(bed, insolationFactor);
}

const withSun = (surface: Surface, factor: number): Surface => ({
  ...surface,
  sunK: (rangeK, extraterrestrialMJ) => factor * surface.sunK(rangeK, extraterrestrialMJ),
});

/** Short grass, and what grows by itself: the more that is known of the place, the better. */
function grassSurface(place: ClimateNumbers | null): Surface {
  const soil = { conductivity: 1, heatCapacity: 2.5e6, isOfExtremes: true };
  if (!place) {
    return {
      ...soil,
      conductance: 5,
      constantK: -5.09,
      perRangeK: -0.33,
      sunK: (rangeK, above) => 6.18 * sunninessOf(rangeK, above),
      // Between the climates nothing is known of this one.
      residuals: { ...residualsWithoutRain(0), scale: 1 },
    };
  }
  const { continentality, vapourKPa, rangeSeason, logAridity: humidity } = place;
  if (humidity === null) {
    const perQ = 5.73 + 0.955 * vapourKPa + 1.58 * rangeSeason - 1.14 * continentality;
    return {
      ...soil,
      conductance: 5,
      constantK: -4.81,
      perRangeK: -0.384,
      sunK: (rangeK, above) => perQ * sunninessOf(rangeK, above),
      residuals: residualsWithoutRain(vapourKPa),
    };
  }
  const perQ = 6.19 - 1.05 * humidity - 1.78 * continentality;
  return {
    ...soil,
    conductance: Math.min(15, Math.max(2.5, 5 * Math.exp(-0.2 * humidity))),
    constantK: -4.77,
    perRangeK: -0.42,
    sunK: (rangeK, above) => perQ * sunninessOf(rangeK, above),
    residuals: residualsWithRain(humidity),
  };
}

/** The residuals of the average station, on bare ground. */
const ON_BARE_GROUND = { ...onBareGround(residualsWithRain(0)), scale: 1 };

function bareSurface({ cover, moisture }: BedMake, insolationFactor: number): Surface {
  const perW = 0.034 * MOISTURE_SUN[moisture] + COVER_K[cover] / SUNNY_W;
  return {
    conductance: cover === 'mulch' ? MULCHED_CONDUCTANCE : BARE_CONDUCTANCE,
    constantK: -4.3,
    perRangeK: -0.2,
    sunK: (rangeK, above) => insolationFactor * perW * W_PER_MJ * sunshineMJ(rangeK, above),
    isOfExtremes: false,
    conductivity: 1.2,
    heatCapacity: 2e6,
    residuals: ON_BARE_GROUND,
  };
}

function peatSurface({ cover, moisture }: BedMake, insolationFactor: number): Surface {
  const perW = PEAT_SUN[moisture] + COVER_K[cover] / SUNNY_W;
  return {
    conductance: cover === 'mulch' ? MULCHED_CONDUCTANCE : BARE_CONDUCTANCE,
    constantK: -3,
    perRangeK: 0,
    sunK: (rangeK, above) => insolationFactor * perW * W_PER_MJ * sunshineMJ(rangeK, above),
    isOfExtremes: false,
    conductivity: 0.3,
    heatCapacity: 2.1e6,
    residuals: ON_BARE_GROUND,
  };
}

/**
 * The sol-air temperature of a day: what the soil's surface would take without soil below.
 *
 * @param surface            How weather meets the soil.
 * @param meanC              The day's air: middle of the extremes, or its mean [°C].
 * @param rangeK             Its range, at least 0.5 [K].
 * @param extraterrestrialMJ Sunshine above the atmosphere [MJ m⁻² d⁻¹].
 * @returns F [°C].
 *
 * Source: Mackey, Wright (1944), the name and the idea; the terms as `surfaceOf`.
 */
export const solAirC = (
  { constantK, perRangeK, sunK }: Surface,
  meanC: number,
  rangeK: number,
  extraterrestrialMJ: number,
): number => meanC + constantK + perRangeK * (rangeK - 13) + sunK(rangeK, extraterrestrialMJ);
