import type { BedMake, Cover, Moisture } from '../bed.js';
import { sunshineMJ } from '../sun/sun.js';
import type { ClimateNumbers } from './climate-numbers.js';
import { onBareGround, type ResidualModel, residualsWithoutRain, residualsWithRain } from './residual-model.js';

/**
 * Energy exchange of weather and soil: F = air + constantK + perRangeK (d - 13) + sunK(d, Ra), through a conductance.
 */
export interface Surface {
  /** h, between the sol-air temperature and the soil's surface [W m⁻² K⁻¹]. */
  readonly conductance: number;
  /** Difference from the air's mean on a dull day [K]. */
  readonly constantK: number;
  /** Change with each kelvin of the diurnal range beyond 13 K: clear nights lose more. */
  readonly perRangeK: number;
  /**
   * Warming by sunshine of the day's mean [K], from the diurnal range [K] and the radiation above the atmosphere [MJ
   * m⁻² d⁻¹].
   */
  readonly sunK: (rangeK: number, extraterrestrialMJ: number) => number;
  /** True when the constants were fitted with the middle of the day's extremes as its mean. */
  readonly isOfExtremes: boolean;
  /** λ of the soil below [W m⁻¹ K⁻¹] and C [J m⁻³ K⁻¹]. */
  readonly conductivity: number;
  readonly heatCapacity: number;
  /** Measured less modelled daily means at 5 cm. */
  readonly residuals: ResidualModel;
}

/** Mean radiation [W m⁻²] from a daily sum [MJ m⁻²]. */
const W_PER_MJ = 1e6 / 86_400;

/**
 * Q: sunshine number of a day, about 1 on a normal summer day.
 *
 * @param rangeK             The air's diurnal range, at least 0.5 [K].
 * @param extraterrestrialMJ Radiation above the atmosphere [MJ m⁻² d⁻¹].
 * @returns Q, no unit.
 * @example sunninessOf(14, 41.9105) // => 1.62985
 */
export const sunninessOf = (rangeK: number, extraterrestrialMJ: number): number => (extraterrestrialMJ * rangeK) / 360;

/**
 * Warming of bare soil by sunshine, relative to rain-fed soil [1]. Moist and wet are scaled by the contrast of wet and
 * dry surfaces on clear days, and not measured; dry is from desert stations. Grass is assumed to follow the same
 * ratios.
 */
const MOISTURE_SUN: Record<Moisture, number> = { rain: 1, moist: 0.68, wet: 0.48, dry: 1.06 };
/** Moist peat in a pot or tray of unknown colour [K per W m⁻²]: between white, 0.020, and black, 0.025. */
const PEAT_SUN: Record<Moisture, number> = { rain: 0.0225, moist: 0.0225, wet: 0.016, dry: 0.034 };
/**
 * Effect of a cover on the sol-air temperature of a sunny summer day [K]: published rises of the mean under films and
 * fleece; mulch lowers the mean by 1 K and, by its conductance, the afternoon at 1 cm by 6 K.
 */
const COVER_K: Record<Cover, number> = { bare: 0, grass: 0, mulch: -1, 'black-film': 2, 'clear-film': 4, fleece: 1 };
/** Radiation on that day: 32 and 18 °C, 26 MJ m⁻². */
const SUNNY_W = 301;
/** Effect of shade over its percentage: shade keeps off the cold of the sky as well as the sun (our judgement). */
const SHADE_COUNTS = 0.7;
/** Insolation factor of raised soil [1]: our judgement. */
const RAISED_SUN = 1.1;
/** Conductance between bare soil and the air [W m⁻² K⁻¹]: our own fit to one plot at Hamburg. */
const BARE_CONDUCTANCE = 20;
/** The same under straw or chips, which insulate the surface [W m⁻² K⁻¹]. */
const MULCHED_CONDUCTANCE = 8;

/**
 * Energy exchange of weather and the soil of a bed.
 *
 * @param bed    Its kind, cover, moisture and shade; not indoors.
 * @param place  Climate numbers of the place; null when no year of its air is known.
 * @returns The surface, and the soil below it.
 *
 * Source: grass: our own study of 99 stations of the U.S. Climate Reference Network, daily means; bare: our own fit to
 * one plot, Hamburg, April to December 2018, by the hour (Deutscher Wetterdienst, station 01975). With each month left
 * out in turn, its daily means at 5 cm came within 1.29 K (RMSE), without the term in the range within 1.37 K, and
 * November and December within 0.6 to 0.9 K rather than 1.1 to 1.6 K. Soil: de Vries (1963), as tabulated by Moene, van
 * Dam (2014), Table 2.2. Covers: Lamont (1993), Ham (1993) for films, from copies; the split into surface terms is
 * ours.
 * Validity: 26 to 49° N, mostly grass; everything but grass and bare, rain-fed ground is derived, not measured.
 */
export function surfaceOf(bed: BedMake, place: ClimateNumbers | null): Surface {
  const surface = describedSurface(bed, place);
  if (isChecked(bed)) return surface;
  const { residuals } = surface;
  return { ...surface, residuals: { ...residuals, scale: UNCHECKED_SCALE * residuals.scale } };
}

/** True for beds that were validated: grass, and bare, rain-fed ground in the open. */
export const isChecked = ({ kind, cover, moisture, shadePercent }: BedMake): boolean =>
  kind === 'open-ground' && (cover === 'grass' || cover === 'bare') && moisture === 'rain' && shadePercent === 0;

/** Variance inflation for bed types without validation data (our judgement). */
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

/** Short grass and natural cover. More data about the place give a better fit. */
function grassSurface(place: ClimateNumbers | null): Surface {
  const soil = { conductivity: 1, heatCapacity: 2.5e6, isOfExtremes: true };
  if (!place) {
    return {
      ...soil,
      conductance: 5,
      constantK: -5.09,
      perRangeK: -0.33,
      sunK: (rangeK, above) => 6.18 * sunninessOf(rangeK, above),
      // The place's climate is unknown, so the spread is that of all climates.
      residuals: { ...residualsWithoutRain(0), scale: 1 },
    };
  }
  const { continentality, vapourKPa, rangeSeason, logAridity } = place;
  if (logAridity === null) {
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
  const perQ = 6.19 - 1.05 * logAridity - 1.78 * continentality;
  return {
    ...soil,
    conductance: Math.min(15, Math.max(2.5, 5 * Math.exp(-0.2 * logAridity))),
    constantK: -4.77,
    perRangeK: -0.42,
    sunK: (rangeK, above) => perQ * sunninessOf(rangeK, above),
    residuals: residualsWithRain(logAridity),
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
 * The sol-air temperature of a day: the temperature of the surface if no soil lay below it.
 *
 * @param surface            Energy exchange of weather and soil.
 * @param meanC              The day's air: middle of the extremes, or its mean [°C].
 * @param rangeK             Its range, at least 0.5 [K].
 * @param extraterrestrialMJ Radiation above the atmosphere [MJ m⁻² d⁻¹].
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
